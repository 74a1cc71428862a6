// The internal vibrators a plan is made with, and how far apart their points stand.
#pragma once

#include "pour/planner/planner.h"
#include "trade/motors/internal_vibrator.h"

namespace rb {

inline const trade::InternalVibrator& planned_vibrators() {
  return trade::internal_vibrators().at(static_cast<std::size_t>(kPlannedGroup) - 1);
}

/// The widest that points may stand apart.
inline Length planned_spacing(const Limits& limits) {
  return trade::mean_radius(planned_vibrators()) * limits.insert_spacing_factor.value;
}

}  // namespace rb
