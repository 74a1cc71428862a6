// Lateral pressure by DIN 18218, characteristic value in kN/m2, v in m/h, tE in h: the setting time
// of the concrete at its own temperature, so that no further correction for temperature is made.
// 2010 edition (from memory except where said):
//   F1 (5v+21)K1, F2 (10v+19)K1, F3 (14v+18)K1, F4 (17v+17)K1, each at least 25;
//   F5 25+30 v K1, F6 25+38 v K1, each at least 30; never over the liquid head.
//   K1: F1 1+0.03(tE-5), F2 1+0.053(tE-5), F3 1+0.077(tE-5), F4 1+0.14(tE-5), F5 and F6 tE/5.
//   SCC: (1.0 m + 0.26 v tE) x unit weight, at least 30: second hand, from an
//   article in Concrete International.
//   Holds for 5 h <= tE <= 20 h (a shorter time counts as 5 h), v <= 7 m/h, placing from the top,
//   internal vibrators. The F formulas are for 25 kN/m3: a heavier concrete is scaled up, a lighter
//   one is not scaled down (our own, conservative choice).
// 1980 edition: K1 (5v+21)kT, K2 (10v+19)kT, kT = (145-3T)/100, v <= 7 m/h, set within 5 h,
//   25 kN/m3, printed for 5 to 25 degC: second hand, as a handbook prints it. K3 (14v+18)kT:
//   memory.
#pragma once

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

/// Flow classes of EN 206 (flow table), and self-compacting concrete.
enum class FlowClass { f1, f2, f3, f4, f5, f6, scc };
std::string_view to_text(FlowClass flow);  ///< "F1" .. "F6", "SCC"

/// The class a slump is taken for. There is no formal conversion. Our choice: slump class Sn of
/// EN 206 counts as Fn, every limit drawn 20 mm lower so that a doubtful slump falls into the
/// softer class: F1 < 25 mm, F2 < 75, F3 < 135, F4 < 195, F5 < 235, F6 < 260, SCC from 260 mm.
FlowClass flow_class_for(Length slump);

/// K1 of the 2010 edition; 1 up to 5 h.
double din18218_setting_factor(FlowClass flow, Seconds set_time);

/// 2010 edition for a flow class known. Refused over 7 m/h or over 20 h to set.
Result<Pressure> din18218_pressure(FlowClass flow, const PressureCase& c, Velocity rise);

/// 2010 edition, flow class by flow_class_for(slump). The shape of the form makes no difference.
Result<Pressure> din18218_pressure(const PressureCase& c, Velocity rise);

/// Consistency ranges of the 1980 edition: K1 stiff, K2 plastic, K3 soft.
enum class Consistency1980 { k1, k2, k3 };

/// 1980 edition, for 25 kN/m3 and without the cap of the liquid head. Refused over 7 m/h or outside
/// 5 to 25 degC.
Result<Pressure> din18218_1980_pressure(Consistency1980 consistency, Velocity rise,
                                        Celsius concrete);

}  // namespace rb::trade
