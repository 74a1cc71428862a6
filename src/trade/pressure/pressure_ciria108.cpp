#include "trade/pressure/pressure_ciria108.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rb::trade {
namespace {
constexpr Length kMostSlump = millimetres(220.0);
}

double ciria108_temperature_factor(Celsius concrete) {
  const double root = 36.0 / (concrete.degrees + 16.0);
  return root * root;
}

double ciria108_shape_coefficient(FormShape shape) {
  return shape == FormShape::column ? 1.5 : 1.0;
}

double ciria108_cement_coefficient(CementClass cement) {
  switch (cement) {
    case CementClass::plain:
      return 0.30;
    case CementClass::retarded:
    case CementClass::blended:
      return 0.45;
    case CementClass::blended_retarded:
    case CementClass::high_blend:
      return 0.60;
  }
  return 0.60;
}

Result<Pressure> ciria108_pressure(const PressureCase& c, Velocity rise) {
  if (auto fault = fault_of(c)) return Failed(*std::move(fault));
  if (auto fault = fault_of(rise)) return Failed(*std::move(fault));
  if (c.slump > kMostSlump) {
    return method_does_not_hold(
        PressureMethod::ciria108,
        {said("slump {slump} is near self-compacting concrete, which the method leaves out"),
         {{"slump", Amount{Measure::small_length, in_metres(c.slump)}}}});
  }
  const Pressure head = full_liquid_head(c.unit_weight, c.pour_height);
  const double height = in_metres(std::max(c.form_height, c.pour_height));
  const double mobile = ciria108_shape_coefficient(c.shape) * std::sqrt(in_metres_per_hour(rise));
  if (mobile > height) return head;
  const double depth = mobile + ciria108_cement_coefficient(c.cement) *
                                    ciria108_temperature_factor(c.temperature) *
                                    std::sqrt(height - mobile);
  return std::min(head, full_liquid_head(c.unit_weight, metres(depth)));
}

}  // namespace rb::trade
