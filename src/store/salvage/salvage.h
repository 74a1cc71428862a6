// What is still whole in a damaged book: its rows read out of the pages of the file and of the log
// beside it, each judged by its own hash. One piece of code for opening a damaged book, for rescue
// and for a file that was cut off. Never writes.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "base/result.h"
#include "store/file/damage.h"
#include "store/file/keeping.h"
#include "store/salvage/page_images.h"

namespace rb::store {

struct SalvagedRow {
  Row row;
  Hash hash{};
};

struct Salvage {
  std::optional<BookName> name;       ///< the book's own row; none where it is lost
  std::string tag;                    ///< told by the name, else by the ids; empty: neither
  std::vector<SalvagedRow> rows;      ///< whole, in order of number, each number once
  std::vector<DamagedEvent> damaged;  ///< numbers up to `last` that have no whole row
  std::int64_t last = 0;              ///< the last number known to have been kept
  std::optional<Head> head;           ///< the newest head that does not contradict the rows
  /// Whole rows behind those SQLite would read: in a log it no longer follows.
  std::size_t behind = 0;
  /// Those behind were kept one after the other, so that no cut of power explains them.
  bool behind_acknowledged = false;
};

/// Any bytes may be given: never reads beyond them, never takes long for their length.
Salvage salvage(Bytes file, Bytes log);

/// Of the book at a settled path and its log; an Error of kind book when the file cannot be read.
Result<Salvage> salvage(const std::filesystem::path& path);

/// The last row whose chain is whole from the first event on; number 0 where the first is lost.
Head last_good(const Salvage& salvage);

}  // namespace rb::store
