// A length as a tape of feet and inches shows it.
#pragma once

#include <string>

#include "base/quantity.h"

namespace rb {

/// To the nearest half inch: 4 feet 11 1/2 inches with their signs, no unit in letters.
std::string feet_and_inches(Length length);

}  // namespace rb
