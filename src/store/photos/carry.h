// Photos brought to where a copy, a mirror or a rescued book stands.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "base/path.h"
#include "base/result.h"
#include "store/book/logbook.h"

namespace rb::store {

struct Carried {
  std::size_t brought = 0;          ///< that were not there before
  std::vector<std::string> faults;  ///< plain sentences: altered ones are left where they are
};

/// Brings what stands in one folder of photos and not in the other, each whole, held to its hash
/// and synced; a folder that is not there has none. `known` are names found there before, not
/// looked at again; null: all are looked at. `go_on` false: it stops between two. Error (input):
/// the other folder does not take them.
Result<Carried> carry_photos(const Path& from, const Path& to,
                             std::set<std::string>* known = nullptr,
                             const std::function<bool()>& go_on = {});

/// The photos that a book names, brought from one folder to another: what is lacking there
/// afterwards, and why, in plain sentences.
std::vector<std::string> bring_photos(const Path& from, const VerifyReport& book, const Path& to);

/// What stands against the photos that a book names, in plain sentences: which are missing from the
/// folder, which are altered. Reads each of them.
std::vector<std::string> photo_faults(const std::vector<PhotoNamed>& named, const Path& folder);

}  // namespace rb::store
