// One attempt at a deck: layer by layer, bay by bay, worked from above. Inside this room.
#pragma once

#include "pour/planner/planner.h"
#include "pour/planner/supply.h"

namespace rb {

/// The wish is one that makes sense (wish_fault.h). Errors: refused.
Result<PlannedPour> attempt_deck(const PlanWish& wish, LastLoad last);

}  // namespace rb
