// A copy of a book while it is in use, and a book made again from a copy or a mirror.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "base/result.h"

namespace rb::store {

struct CopyReport {
  std::filesystem::path file;
  std::int64_t events = 0;
  std::string head_hash;             ///< of the copy's last event
  std::vector<std::string> lacks{};  ///< photos it does not have, in plain sentences
};

/// Told how much is done, 0 to 1; false asks it to stop.
using Progress = std::function<bool(double)>;

/// Copies the book into a folder (made if missing) under a name that tells its tag, the moment and
/// the last event, and that nothing else has. The copy is on its disk and was looked through when
/// this returns; else nothing is left of it. Taps go on meanwhile; those kept after it began are
/// not in it. Any thread.
Result<CopyReport> copy_book(const std::filesystem::path& book, const std::filesystem::path& folder,
                             const Progress& progress = {});

struct RestoreReport {
  std::int64_t events = 0;
  std::string head_hash;
  std::vector<std::string> lacks;  ///< what it does not have, in plain sentences
};

/// Makes a book at `to` from a copy or a mirror: the same name, events and hashes. Refuses where
/// anything stands, and beside what another book left.
Result<RestoreReport> restore_book(const std::filesystem::path& from,
                                   const std::filesystem::path& to);

}  // namespace rb::store
