// What the numbers of a plan may be, in the units they stand in. Inside this room.
#pragma once

#include "pour/plan/field.h"

namespace rb::span {

inline constexpr Span kAlong{0, 500, "m", true};
inline constexpr Span kPosition{0, 500, "m"};
inline constexpr Span kHeight{0, 200, "m", true};
inline constexpr Span kThickness{0, 50, "m", true};
inline constexpr Span kReach{0, 10, "m", true};
inline constexpr Span kUnitWeight{5, 60, "kN/m3"};
inline constexpr Span kSlump{0, 0.9, "m"};
inline constexpr Span kSetHours{0.25, 96, "h"};
inline constexpr Span kTemp{-30, 70, "degC"};
inline constexpr Span kAir{0, 30, "per cent"};
inline constexpr Span kDensity{500, 6000, "kg/m3"};
inline constexpr Span kDensityTolerance{0, 1000, "kg/m3"};
inline constexpr Span kActivation{1000, 10000, "K"};
inline constexpr Span kPressure{1, 2000, "kPa"};
inline constexpr Span kMassPerArea{0, 5000, "kg/m2"};
inline constexpr Span kRise{0, 100, "m/h", true};
inline constexpr Span kBatter{-45, 45, "degrees"};
inline constexpr Span kSeconds{0, 86400, "s"};
inline constexpr Span kStrength{0, 300, "MPa", true};
inline constexpr Span kQuarter{0, 8035200, "s"};
inline constexpr Span kMonth{0, 2678400, "s"};
inline constexpr Span kShare{0, 1, "(a share from 0 to 1)"};

}  // namespace rb::span
