// What the record tells of loads and their tests. Inside this room.
#pragma once

#include "record/model/daily_record.h"

namespace rb {

/// A line a load, more for more tests and more parts of it; then the tests of tickets no truck was
/// logged for.
std::vector<TruckLine> load_lines(const PourState& state);

}  // namespace rb
