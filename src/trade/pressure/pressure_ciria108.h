// Lateral pressure by CIRIA Report 108:
//   p = D [C1 sqrt(R) + C2 K sqrt(H - C1 sqrt(R))] or D h, whichever is less; D h where
//   C1 sqrt(R) > H. K = (36/(T + 16))^2; H form height, h pour height, m; D kN/m3; R m/h; T degC.
// Sources: CIRIA Report 108, not seen. Formula, K, the cap, C1 (wall 1.0, column 1.5) and C2 0.30,
// 0.45, 0.60 second hand, from a worked sheet; C2 of each cement class from memory. The report
// gives no least pressure and no greatest rate that we know of. Does not hold for self-compacting
// concrete: refused over 220 mm slump (class S5 of EN 206 starts there; that the limit is drawn
// just there is our own choice).
#pragma once

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

double ciria108_temperature_factor(Celsius concrete);    ///< K
double ciria108_shape_coefficient(FormShape shape);      ///< C1, m0.5 h0.5
double ciria108_cement_coefficient(CementClass cement);  ///< C2, m0.5

/// The greatest lateral pressure. Input error for a case or a rate that makes no sense; refused for
/// concrete as wet as self-compacting concrete.
Result<Pressure> ciria108_pressure(const PressureCase& c, Velocity rise);

}  // namespace rb::trade
