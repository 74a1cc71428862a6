// Which mix of the plan a test was made on. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

/// None: a load nobody entered, in a plan of several mixes.
const Mix* tested_mix(const PourState& state, const TestState& test);
/// The element its load went into, if that was told.
std::optional<std::size_t> tested_element(const PourState& state, const TestState& test);

}  // namespace rb
