// How fast something rises, from readings of which one may be bad: the median of the slopes between
// all pairs of readings (Theil 1950, Sen 1968), and the line through the middle of them. The range
// is Sen's interval at 80 %, from the ranks of the slopes (read in a statistics text's page),
// widened by what two readings may be off over the time between the first and the last.
#pragma once

#include <optional>
#include <span>

#include "base/quantity.h"

namespace rb::trade {

struct TrendPoint {
  Seconds at{};
  Length height;
};

/// How far a top read off the form may be off: common practice, no source.
inline constexpr Length kTopReadingError = millimetres(25.0);

struct Trend {
  Velocity low, likely, high;  ///< low may be under zero
  Seconds middle{};            ///< the line goes through this point
  Length height;
  int readings = 0;
  [[nodiscard]] Length at(Seconds moment) const;  ///< on the likely line
};

/// Nothing with fewer than two moments read. One bad reading among five or more leaves the likely
/// line to the others (no more than their own scatter moves it); the range may well grow. Any
/// order.
std::optional<Trend> trend(std::span<const TrendPoint> points, Length error = kTopReadingError);

}  // namespace rb::trade
