// Copper conductors of IEC 60228: the greatest resistance at 20 degC, plain annealed copper, class
// 2 (stranded) and classes 5 and 6 (flexible), 0.5 to 630 mm2. Not seen, second hand, from two
// tables that agree. At other temperatures R = R20 (1 + 0.004 (T - 20)), the factor of IEC 60228 as
// told with one of those tables (Kt = 1/(1 + 0.004 (T - 20))); the often quoted 0.00393 gives 1 %
// less at 90 degC.
#pragma once

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

using ResistancePerLength = boost::units::divide_typeof_helper<Resistance, Length>::type;
constexpr ResistancePerLength ohms_per_kilometre(double v) {
  return quantity_of<ResistancePerLength>(v / 1000.0);
}
constexpr double in_ohms_per_kilometre(ResistancePerLength r) {
  return r.value() * 1000.0;
}
constexpr Area square_millimetres(double v) {
  return square_metres(v * 1e-6);
}
constexpr double in_square_millimetres(Area a) {
  return in_square_metres(a) * 1e6;
}

enum class ConductorClass { class2, class5 };

/// A conductor's resistance for its length. A section between two standard ones counts as the
/// smaller, which has the greater resistance. Input error under 0.5 mm2 or over 1000 mm2, or for a
/// conductor outside -50 to 200 degC.
Result<ResistancePerLength> conductor_resistance(ConductorClass conductor, Area section,
                                                 Celsius temperature = Celsius{20.0});

/// R at a temperature over R at 20 degC.
double copper_temperature_factor(Celsius temperature);

}  // namespace rb::trade
