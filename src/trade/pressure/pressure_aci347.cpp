#include "trade/pressure/pressure_aci347.h"

#include <fmt/format.h>

#include <algorithm>

namespace rb::trade {
namespace {

// The same standard printed twice: the numbers of each printing, in its own units.
struct Printing {
  Velocity slow;
  Velocity fast;
  Length low_placement;
  Length most_slump;
  double base, rate_1, constant_2, rate_2, least;
  double light, heavy, normal;  // density limits of Cw
  double (*rise)(Velocity);
  double (*warmth)(Celsius);
  double (*density)(UnitWeight);
  Pressure (*pressure)(double);
};

constexpr Printing kSi{metres_per_hour(2.1),
                       metres_per_hour(4.5),
                       metres(4.2),
                       millimetres(175.0),
                       7.2,
                       785.0,
                       1156.0,
                       244.0,
                       30.0,
                       2240.0,
                       2400.0,
                       2320.0,
                       in_metres_per_hour,
                       [](Celsius t) { return t.degrees + 17.8; },
                       [](UnitWeight w) { return w.value() / kStandardGravity; },
                       kilopascals};

constexpr Printing kUs{feet_per_hour(7.0),
                       feet_per_hour(15.0),
                       feet(14.0),
                       inches(7.0),
                       150.0,
                       9000.0,
                       43400.0,
                       2800.0,
                       600.0,
                       140.0,
                       150.0,
                       145.0,
                       in_feet_per_hour,
                       [](Celsius t) { return t.fahrenheit(); },
                       in_pcf,
                       psf};

const Printing& printing(Aci347Units units) {
  return units == Aci347Units::us ? kUs : kSi;
}

bool first_formula_holds(const PressureCase& c, Velocity rise, const Printing& p) {
  return c.shape == FormShape::column || (rise < p.slow && c.pour_height <= p.low_placement);
}

}  // namespace

double aci347_weight_coefficient(UnitWeight unit_weight, Aci347Units units) {
  const Printing& p = printing(units);
  const double w = p.density(unit_weight);
  if (w < p.light) return std::max(0.80, 0.5 * (1.0 + w / p.normal));
  return w > p.heavy ? w / p.normal : 1.0;
}

double aci347_chemistry_coefficient(CementClass cement) {
  switch (cement) {
    case CementClass::plain:
      return 1.0;
    case CementClass::retarded:
    case CementClass::blended:
      return 1.2;
    case CementClass::blended_retarded:
    case CementClass::high_blend:
      return 1.4;
  }
  return 1.4;
}

Pressure aci347_formula(const PressureCase& c, Velocity rise, Aci347Units units) {
  const Printing& p = printing(units);
  const double r = p.rise(rise);
  const double t = p.warmth(c.temperature);
  const double bracket = first_formula_holds(c, rise, p)
                             ? p.base + p.rate_1 * r / t
                             : p.base + p.constant_2 / t + p.rate_2 * r / t;
  return p.pressure(aci347_weight_coefficient(c.unit_weight, units) *
                    aci347_chemistry_coefficient(c.cement) * bracket);
}

Result<Pressure> aci347_pressure(const PressureCase& c, Velocity rise, Aci347Units units) {
  if (auto fault = fault_of(c)) return Failed(*std::move(fault));
  if (auto fault = fault_of(rise)) return Failed(*std::move(fault));
  const Printing& p = printing(units);
  if (c.slump > p.most_slump) {
    return method_does_not_hold(
        PressureMethod::aci347,
        {said("slump {slump} is over the {most} the method covers"),
         {{"slump", Amount{Measure::small_length, in_metres(c.slump)}, Rounding::up},
          {"most", Amount{Measure::small_length, in_metres(p.most_slump)}, Rounding::down}}});
  }
  const Pressure head = full_liquid_head(c.unit_weight, c.pour_height);
  if (c.shape == FormShape::wall && rise > p.fast) return head;
  const Pressure least = p.pressure(p.least * aci347_weight_coefficient(c.unit_weight, units));
  return std::min(head, std::max(least, aci347_formula(c, rise, units)));
}

}  // namespace rb::trade
