// How concrete comes to a planned pour: the pace of placing, and the load to order. Inside this
// room.
#pragma once

#include "pour/planner/planner.h"
#include "trade/concrete/placing.h"

namespace rb {

/// Loads are ordered in steps of this, and none smaller.
inline constexpr Volume kLoadStep = cubic_metres(0.5);

struct Supply {
  trade::VolumeRate pace;  ///< with the pauses
  Volume in_time;          ///< what can be placed of a load from its coming until it is too old
  Volume load;             ///< to order: the wished one, or what grows no older than it may
  Seconds empties{};       ///< how long it takes to empty that
};
/// For so much concrete placed in so long.
Supply supply_for(const PlanWish& wish, Volume concrete, Seconds duration);

/// From water meeting cement to the end of workability, the early side.
Seconds workable(const PlanWish& wish);

}  // namespace rb
