// The checker's sentences are in SI; on paper for US units their numbers are turned with them.
#pragma once

#include <string>

#include "pour/plan.h"

namespace rb {

/// The sentence with every number that stands before one of the script's units ("2.31 m/h",
/// "0.50 x 1.20 m", "50.0 kPa", "8 degC") shown in the plan's units; all else as it is.
std::string in_units(const std::string& sentence, Units units);

}  // namespace rb
