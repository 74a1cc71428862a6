// A pour that follows a run sheet to the second, as events.
#pragma once

#include <string>
#include <vector>

#include "pour/log/event.h"
#include "pour/log/state.h"
#include "pour/planner/planner.h"

namespace rb {

/// A wall 12 x 4.8 x 0.3 m that can be planned.
PlanWish wish_for(ElementId element);

std::vector<Event> follow_sheet(const PlannedPour& planned, const PlanWish& wish);

/// Those taps, through the script's text, so that what is written is what is read.
PourState followed(const PlannedPour& planned, const PlanWish& wish);

}  // namespace rb
