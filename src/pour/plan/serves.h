// Which lifts a row works for, where nobody says.
#pragma once

#include <vector>

#include "pour/plan/plan.h"

namespace rb {

/// The lifts (from 1) whose band a row reaches into, by more than a millimetre.
std::vector<int> lifts_in_reach(const Row& row, const Element& element);

}  // namespace rb
