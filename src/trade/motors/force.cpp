#include "trade/motors/force.h"

#include <algorithm>
#include <numbers>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

Bound speed_bound(Frequency f, double least = 0.0) {
  return {said("speed"), in_hertz(f), least, 500.0, "Hz"};
}

double angular(Frequency f) {
  return 2.0 * std::numbers::pi * in_hertz(f);
}

}  // namespace

Result<Force> centrifugal_force(Mass eccentric, Length radius, Frequency speed) {
  if (auto fault = outside(said("force"),
                           {{said("eccentric mass"), in_kilograms(eccentric), 0.0, 100.0, "kg"},
                            {said("eccentric radius"), in_metres(radius), 0.0, 1.0, "m"},
                            speed_bound(speed)})) {
    return Failed(*std::move(fault));
  }
  const double w = angular(speed);
  return newtons(in_kilograms(eccentric) * in_metres(radius) * w * w);
}

Result<Force> force_at_speed(Force rated, Frequency rated_speed, Frequency speed) {
  if (auto fault =
          outside(said("force"), {{said("rated force"), in_kilonewtons(rated), 0.0, 500.0, "kN"},
                                  {said("rated speed"), in_hertz(rated_speed), 1.0, 500.0, "Hz"},
                                  speed_bound(speed)})) {
    return Failed(*std::move(fault));
  }
  const double ratio = speed / rated_speed;
  return rated * (ratio * ratio);
}

double second_counts(Frequency speed, Frequency working) {
  const double ratio = std::min(double{speed / working}, 1.0);
  return ratio * ratio;
}

Result<Acceleration> acceleration(Length amplitude, Frequency frequency) {
  if (auto fault = outside(said("acceleration"),
                           {{said("amplitude"), in_millimetres(amplitude), 0.0, 100.0, "mm"},
                            speed_bound(frequency)})) {
    return Failed(*std::move(fault));
  }
  const double w = angular(frequency);
  return metres_per_second2(in_metres(amplitude) * w * w);
}

Result<Length> amplitude(Acceleration peak, Frequency frequency) {
  if (auto fault = outside(said("amplitude"), {{said("acceleration"), in_metres_per_second2(peak),
                                                0.0, 10000.0, "m/s2"},
                                               speed_bound(frequency, 1.0)})) {
    return Failed(*std::move(fault));
  }
  const double w = angular(frequency);
  return metres(in_metres_per_second2(peak) / (w * w));
}

Result<Force> force_needed(Mass form, Mass concrete_in_reach, FormKind kind) {
  if (auto fault =
          outside(said("force needed"),
                  {{said("form mass"), in_kilograms(form), 0.0, 1e6, "kg"},
                   {said("concrete mass"), in_kilograms(concrete_in_reach), 0.0, 1e6, "kg"}})) {
    return Failed(*std::move(fault));
  }
  const double factor = kind == FormKind::wall_or_beam ? 0.5 : 1.5;
  return newtons(factor * (in_kilograms(form) + 0.2 * in_kilograms(concrete_in_reach)) *
                 kStandardGravity);
}

}  // namespace rb::trade
