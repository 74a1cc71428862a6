// What runs on each inverter, trunk and generator at every moment it changes: the busiest stretch
// of each, and what is lost in the cords then. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

/// Fills Look::power and Look::generators. Of the stretches in which most is drawn the first, in a
/// live look the latest. Nothing without the plan's motor_type.
void look_at_power(Look& look);

}  // namespace rb
