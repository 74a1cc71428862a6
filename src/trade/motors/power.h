// Power to the form vibrators: balanced three-phase, low voltage. Voltages are between lines,
// currents are line currents. Electrical work follows local codes and a licensed electrician; these
// figures only tell when a feed looks overloaded or starved.
//   S = sqrt(3) U I: definition.
//   dU = sqrt(3) I L (R cos phi + X sin phi): common to handbooks of installation.
#pragma once

#include <optional>
#include <span>

#include "trade/motors/conductor.h"

namespace rb::trade {

using rb::ApparentPower;
using rb::in_kilovoltamperes;
using rb::kilovoltamperes;

/// S = sqrt(3) U I.
ApparentPower apparent_power(Potential between_lines, Current line);
/// The line current that carries an apparent power.
Current line_current(ApparentPower power, Potential between_lines);

struct InverterLoad {
  Current line;  ///< in each of the three phases
  ApparentPower power;
  double share = 0.0;  ///< of the inverter's greatest current; over 1 is overload
};

/// What the running motors draw together. Their currents are added as if in phase, which is never
/// too little. Input error outside 10 to 1000 V, 0 to 1000 A, for a greatest current not over 0.
Result<InverterLoad> inverter_load(Potential volts, Current greatest,
                                   std::span<const Current> running);

/// The share of a generator's rating that inverters take together. Input error as inverter_load,
/// or for a rating not over 0 to 10 MVA.
Result<double> generator_share(ApparentPower rating, std::span<const InverterLoad> loads);

/// Of its rating, what a generator is taken to give where its derating is not known: a choice of
/// this project. Height, heat and motors that start take some of it.
inline constexpr double kDerate = 0.8;

/// The cosine of the angle between voltage and current; 0 to 1.
struct PowerFactor {
  double cosine;
};

/// A three-core cable from an inverter to a motor.
struct Feed {
  Area section;
  Length length;
  ConductorClass conductor = ConductorClass::class5;
  Celsius conductor_temperature{70.0};  ///< a PVC cable at its full load; common practice
  /// 0.08 ohm/km at 50 Hz, common practice; it grows with the frequency.
  ResistancePerLength reactance_50hz = ohms_per_kilometre(0.08);
  Frequency frequency = hertz(50.0);  ///< of the inverter's output
  /// Unknown: the angle at which the drop is greatest, I Z.
  std::optional<PowerFactor> power_factor;
};

struct VoltageDrop {
  Potential lost;
  Potential at_motor;
  double share = 0.0;  ///< of the inverter's volts
};

/// The drop over a known resistance and reactance.
Potential three_phase_drop(Current line, Length length, ResistancePerLength resistance,
                           ResistancePerLength reactance, std::optional<PowerFactor> power_factor);

/// The drop from the inverter to a motor. Input error naming the number that makes no sense: cable
/// 0 to 1000 m, 0 to 500 Hz, and the bounds of conductor_resistance and inverter_load; refused
/// where the cable would lose more than there is.
Result<VoltageDrop> voltage_drop(Potential volts, Current line, const Feed& feed);

/// A cord, and the current that goes through all of it.
struct Stretch {
  Current line;
  Feed feed;
};
/// The drop along cords one after the other, as from an inverter through a trunk that several
/// motors share to one motor's own cord. Their drops are added as numbers, which is never too
/// little. Errors as voltage_drop, of which it is the sum; none at all is no drop.
Result<VoltageDrop> drop_along(Potential volts, std::span<const Stretch> cords);

}  // namespace rb::trade
