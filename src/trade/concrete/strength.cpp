#include "trade/concrete/strength.h"

#include <algorithm>

namespace rb::trade {

namespace {

constexpr Celsius kReference{20.0};

// The history with a reading where it crosses the reference: the slower Q changes there.
TemperatureHistory split_at_reference(const TemperatureHistory& history) {
  TemperatureHistory split{history.between, {}};
  split.readings.reserve(2 * history.readings.size());
  for (const TemperatureReading& reading : history.readings) {
    if (!split.readings.empty()) {
      const TemperatureReading before = split.readings.back();
      const double low = before.concrete.degrees - kReference.degrees;
      const double high = reading.concrete.degrees - kReference.degrees;
      if (low * high < 0) {
        split.readings.push_back(
            {before.at + (reading.at - before.at) * (low / (low - high)), kReference});
      }
    }
    split.readings.push_back(reading);
  }
  return split;
}

}  // namespace

std::optional<Pressure> strength_at(std::span<const StrengthPoint> curve, Seconds equivalent_age) {
  if (curve.empty() || equivalent_age < curve.front().age) return std::nullopt;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    if (equivalent_age > curve[i].age) continue;
    const double share =
        (equivalent_age - curve[i - 1].age).count() / (curve[i].age - curve[i - 1].age).count();
    return curve[i - 1].strength + (curve[i].strength - curve[i - 1].strength) * share;
  }
  return curve.back().strength;
}

Result<Seconds> least_equivalent_age(const TemperatureHistory& history, Seconds until,
                                     std::optional<ActivationTemperature> q) {
  if (q) return equivalent_age(history, until, {kReference, *q});
  const TemperatureHistory split = split_at_reference(history);
  Seconds total{};
  // What comes before a stretch is the same for both: the difference is the stretch's own.
  Seconds quick_before{}, slow_before{};
  const auto add_up_to = [&](Seconds at) -> std::optional<Error> {
    const auto quick = equivalent_age(split, at, {kReference, kQuickSet});
    if (!quick) return quick.error();
    const auto slow = equivalent_age(split, at, {kReference, kSlowSet});
    if (!slow) return slow.error();
    total += std::min(*quick - quick_before, *slow - slow_before);
    quick_before = *quick;
    slow_before = *slow;
    return std::nullopt;
  };
  for (const TemperatureReading& reading : split.readings) {
    if (reading.at >= until) break;
    if (auto fault = add_up_to(reading.at)) return Failed(*std::move(fault));
  }
  if (auto fault = add_up_to(until)) return Failed(*std::move(fault));
  return total;
}

}  // namespace rb::trade
