// The record of a day, out of a book into a folder. Used by `record`, `demo` and the screens.
#pragma once

#include <chrono>
#include <vector>

#include "cli/commands.h"
#include "record/form/write_record.h"
#include "store/book/logbook.h"

namespace rb {

/// What was written, and how the book stood.
struct DayWritten {
  std::vector<Path> files;
  bool damaged = false;  ///< told on standard error and printed in the record
};
Result<DayWritten> write_day(const Logbook& book, const LocalDay& day, const Path& folder,
                             const std::vector<Format>& formats, Language language = {});

/// The dose on each judged side of each element, for the pictures.
std::vector<SideDose> dose_maps(const PourState& state);

}  // namespace rb
