// Strength by maturity: from equivalent age and the mix's own curve.
//   Strength against equivalent age at 20 degC, by tests of the mix itself: ASTM C1074 (from
//   memory; the form of its equivalent age second hand, see setting.h). What a curve does not cover
//   is not guessed: nothing before its first point, and never more than at its last.
#pragma once

#include <optional>
#include <span>

#include "base/quantity.h"
#include "base/result.h"
#include "trade/concrete/setting.h"

namespace rb::trade {

/// What the mix reaches at an equivalent age at 20 degC.
struct StrengthPoint {
  Seconds age{};
  Pressure strength;
  bool operator==(const StrengthPoint&) const = default;
};

/// By a curve whose ages go up: straight between its points, nothing before the first (none), the
/// last one's after it.
std::optional<Pressure> strength_at(std::span<const StrengthPoint> curve, Seconds equivalent_age);

/// The least equivalent age at 20 degC over a history that runs straight from reading to reading:
/// by the mix's own Q, else at every temperature by the one of kQuickSet and kSlowSet that hardens
/// it less (our own choice). Errors as of equivalent_age().
Result<Seconds> least_equivalent_age(const TemperatureHistory& history, Seconds until,
                                     std::optional<ActivationTemperature> q);

}  // namespace rb::trade
