// Which mix of the plan a test was made on. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

/// None: a load nobody entered, in a plan of several mixes.
const Mix* tested_mix(const PourState& state, const TestState& test);

}  // namespace rb
