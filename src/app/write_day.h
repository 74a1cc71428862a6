// The record of a day, out of a book into a folder. Used by `record`, `demo` and the screens.
#pragma once

#include <chrono>
#include <vector>

#include "app/commands.h"
#include "record/write_record.h"
#include "store/logbook.h"

namespace rb {

/// What was written, and how the book stood.
struct DayWritten {
  std::vector<Path> files;
  bool damaged = false;  ///< told on standard error and printed in the record
};
Result<DayWritten> write_day(const Logbook& book, Moment day, std::chrono::minutes offset,
                             const Path& folder, const std::vector<Format>& formats);

/// The dose on each judged side of each element, for the pictures.
std::vector<SideDose> dose_maps(const PourState& state);

}  // namespace rb
