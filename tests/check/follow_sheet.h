// A pour that follows a run sheet to the second, as events.
#pragma once

#include <string>
#include <vector>

#include "pour/log/event.h"
#include "pour/planner/planner.h"

namespace rb {

std::vector<Event> follow_sheet(const PlannedPour& planned, const PlanWish& wish);

}  // namespace rb
