// The points of the walk-down before a pour, in the order they are walked (common practice, no
// source). As scripts and books name them: never changed, only added to.
#pragma once

#include <array>

namespace rb {

inline constexpr std::array kWalkDown{
    "form",          "ties",  "bracing",          "rebar",        "motors tight",
    "safety cables", "cords", "inverter setting", "spare motors", "standby internal vibrators",
    "access",        "ppe",   "weather",
};

}  // namespace rb
