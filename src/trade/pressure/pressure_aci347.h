// Lateral pressure by ACI 347 (347-04, 347R-14), in SI and in US customary units.
//   first formula   p = Cw Cc (7.2 + 785 R/(T + 17.8)) kPa   = Cw Cc (150 + 9000 R/T) psf
//   second formula  p = Cw Cc (7.2 + 1156/(T + 17.8) + 244 R/(T + 17.8)) kPa
//                     = Cw Cc (150 + 43400/T + 2800 R/T) psf
// Walls: the first for R < 2.1 m/h (7 ft/h) and a placement up to 4.2 m (14 ft); else the second up
// to 4.5 m/h (15 ft/h); faster, the full liquid head. Columns: the first at any rate. Never under
// 30 Cw kPa (600 Cw psf), never over the liquid head, which wins over the least.
// Sources: ACI 347-04 2.2.2, not seen. Formulas, least, greatest, Cw, Cc, the column rule and the
// slump limit second hand, the SI forms and limits also from memory; the rule of rate and 14 ft
// read in M. K. Hurd, "Use updated wall pressure formulas", Concrete Construction. Does not hold
// for slump over 175 mm (7 in), nor (matters of placing, which the case does not say) for internal
// vibration deeper than 1.2 m, external vibration, or pumping in from the base.
#pragma once

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

enum class Aci347Units { si, us };

/// Cw: w < 2240 kg/m3: 0.5 (1 + w/2320), at least 0.80; to 2400: 1.0; above: w/2320
/// (US 140, 150, 145 lb/ft3).
double aci347_weight_coefficient(UnitWeight unit_weight, Aci347Units units = Aci347Units::si);

/// Cc: 1.0 plain, 1.2 retarded, 1.2 blended, 1.4 blended and retarded, 1.4 high blend.
double aci347_chemistry_coefficient(CementClass cement);

/// The formula's own figure before the least and the greatest value are applied, whichever formula
/// the rate and the height of placement call for; no validity check.
Pressure aci347_formula(const PressureCase& c, Velocity rise, Aci347Units units = Aci347Units::si);

/// The greatest lateral pressure. Input error for a case or a rate that makes no sense; refused for
/// slump over the limit. A wall filled faster than the limit gives the full liquid head.
Result<Pressure> aci347_pressure(const PressureCase& c, Velocity rise,
                                 Aci347Units units = Aci347Units::si);

}  // namespace rb::trade
