// The record of a day, out of a book into a folder. Used by `record`, `demo` and the screens.
#pragma once

#include <chrono>
#include <vector>

#include "app/commands.h"
#include "record/write_record.h"
#include "store/logbook.h"

namespace rb {

Result<std::vector<Path>> write_day(const Logbook& book, Moment day, std::chrono::minutes offset,
                                    const Path& folder, const std::vector<Format>& formats);

/// The dose on each judged side of each element, for the pictures.
std::vector<SideDose> dose_maps(const PourState& state);

}  // namespace rb
