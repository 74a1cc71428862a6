// Puts a planned pour's lifts, moves of motors and waits in time. Inside this room.
#pragma once

#include "pour/planner/planner.h"
#include "trade/motors/sizing.h"

namespace rb {

/// One crew moves one row's motors after the other: first those wanted first, none before the lift
/// that last needs them where they hang was vibrated. A lift waits until the motors of its rows
/// hang. Fills in begins, moves, pauses and what hangs before the first lift; returns the greatest
/// share of the time there is for a move that it takes, over 1 where it is waited for (0: nothing
/// moves).
double put_in_time(PlannedPour& planned, const trade::Sizing& sized, const PlanWish& wish);

}  // namespace rb
