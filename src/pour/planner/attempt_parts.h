// What an attempt at a wall and one at a deck have in common. Inside this room.
#pragma once

#include <optional>

#include "pour/planner/planner.h"
#include "pour/planner/supply.h"

namespace rb {

Error refused(const char* limit, Saying what, Saying remedy);

/// Concrete comes neither colder nor warmer than it may be placed.
std::optional<Error> temperature_fault(const PlanWish& wish);

/// From when concrete comes to its initial set, the early side. It counts from when it was batched:
/// the last of a load is the oldest when it comes.
Seconds sets_from_coming(const PlanWish& wish, const Supply& supply);

/// Loads must be emptied before they grow old, and none is a short one that nobody asked for.
std::optional<Error> put_loads(PlannedPour& planned, const PlanWish& wish, const Supply& supply);

}  // namespace rb
