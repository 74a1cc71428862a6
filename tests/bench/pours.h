// Pours to measure with.
#pragma once

#include <vector>

#include "pour/log/event.h"

namespace bench {

/// About `count` events: walls of 60 x 12 m one after the other, 24 lifts of half a metre each, ten
/// bays read one by one, rows of 40 motors hung with cables, run for two lifts each and moved up;
/// trucks, tests and notes between. A wall is some 5,000 events.
std::vector<rb::Event> long_pour(std::size_t count);

/// The demo pour, entered as it happened: every event has an id and an entry.
std::vector<rb::Event> demo_pour();

/// The events that happened by then.
std::vector<rb::Event> until(std::vector<rb::Event> events, const char* moment);

}  // namespace bench
