// An element as it is planned: its bays, lifts, rows and where motors hang. Inside this room.
#pragma once

#include "pour/planner/planner.h"
#include "trade/motors/sizing.h"

namespace rb {

/// The motor that hangs at a place (from 0) of a row of one set, on a side: sets follow one another
/// up the form.
MotorId planned_motor(const trade::Sizing& sized, std::size_t side, std::size_t set,
                      std::size_t place);

Element laid_out(const PlanWish& wish, const trade::Sizing& sized);

}  // namespace rb
