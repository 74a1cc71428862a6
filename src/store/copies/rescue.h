// A new book of all that is whole in a damaged one.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/file/damage.h"

namespace rb::store {

struct RescueReport {
  std::string tag;
  std::size_t events = 0;             ///< in the new book
  std::size_t from_mirror = 0;        ///< of them, those the damaged book no longer had whole
  std::vector<DamagedEvent> lost;     ///< in neither
  std::int64_t last_good = 0;         ///< the old chain was whole from its beginning up to here
  std::string last_good_hash;         ///< its hash
  bool name_lost = false;             ///< the book's own row was in neither: a new one was given
  std::vector<std::string> photos{};  ///< that it names and lacks, in plain sentences
  std::vector<std::string> faults;    ///< what verify says of the new book nevertheless
};

/// Makes a book at `to`, where nothing may stand, of every event of the book at `from` that is
/// whole, numbers, ids and hashes unchanged; those that are not are taken from the mirror where one
/// is given and has them. What is lost is recorded in the new book, whose numbers go on behind the
/// last one ever given. `from` is only read. An error of kind book when nothing can be read.
Result<RescueReport> rescue_book(const std::filesystem::path& from, const std::filesystem::path& to,
                                 const std::optional<std::filesystem::path>& mirror = {});

}  // namespace rb::store
