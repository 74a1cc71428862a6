// What a wish for a planned pour cannot be. Inside this room.
#pragma once

#include <optional>

#include "base/result.h"
#include "pour/planner/planner.h"

namespace rb {

std::optional<Error> fault_of(const PlanWish& wish);

}  // namespace rb
