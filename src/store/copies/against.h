// A book held against what was told of it elsewhere: a hash or a short code on a record or a
// photograph, a record's file, a note of the head, a mirror, a copy.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/book/logbook.h"

namespace rb::store {

struct AgainstAnswer {
  bool had = false;  ///< the book had all of it, unchanged
  std::string says;  ///< a plain sentence
};

/// One answer for each of `given`: 64 hex digits, a short code, or a file. An error of kind input
/// for what is none of them.
Result<std::vector<AgainstAnswer>> hold_against(const std::filesystem::path& book,
                                                const std::vector<std::string>& given);

/// Mirrors of a book by their names in a folder: "<stem>-<tag>.riseline" and its numbered ones.
std::vector<std::filesystem::path> mirrors_in(const std::filesystem::path& folder,
                                              const std::filesystem::path& book,
                                              const std::string& tag);

}  // namespace rb::store
