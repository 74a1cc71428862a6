// How far concrete has set: equivalent age, the time to reach it, maturity.
//   te = integral exp[-Q (1/T - 1/Tref)] dt, kelvin = degC + 273.15: ASTM C1074, form second
//   hand; Q = Ea/R = 5000 K from memory (Ea 40 to 45 kJ/mol, type I cement).
//   Nurse-Saul M = sum (T - T0) dt, nothing while T < T0: second hand; T0 = 0 degC for
//   type I at 0 to 40 degC (older: -10 degC) from memory.
#pragma once

#include <vector>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

/// Q = Ea/R: how strongly warmth hurries the setting.
struct ActivationTemperature {
  double kelvin = 5000.0;
  constexpr auto operator<=>(const ActivationTemperature&) const = default;
};

struct SettingRate {
  Celsius reference{20.0};
  ActivationTemperature q;
};

/// Where a mix's own Q is not known setting is taken between these two, for what must be done
/// before it sets by the one that sets it sooner, for what must wait by the other. Ours: held
/// against a published table of setting times in tests/published.
inline constexpr ActivationTemperature kQuickSet{6600.0}, kSlowSet{4400.0};

/// How much faster than at the reference concrete sets: 1 at the reference. Pure arithmetic, no
/// check; above absolute zero.
double rate_factor(Celsius concrete, const SettingRate& rate = {});

/// A concrete temperature at a time after water met cement.
struct TemperatureReading {
  Seconds at;
  Celsius concrete;
};

/// Readings in order of time, at least one. The first holds before itself and the last for ever
/// after; between two, a stepped history keeps the earlier and a sloped one runs straight to the
/// later. Temperatures -50 to 100 degC. Two readings at one time make a jump.
struct TemperatureHistory {
  enum class Between { stepped, sloped };
  Between between = Between::stepped;
  std::vector<TemperatureReading> readings;
};

/// The time at a constant temperature to reach an equivalent age. Input error outside -50 to 100
/// degC, for an age below 0 or over 10000 h, for Q outside 1000 to 10000 K.
Result<Seconds> time_to_reach(Seconds equivalent_age, Celsius concrete,
                              const SettingRate& rate = {});

/// The time over a history to reach an equivalent age.
Result<Seconds> time_to_reach(Seconds equivalent_age, const TemperatureHistory& history,
                              const SettingRate& rate = {});

/// Equivalent age from 0 to a time over a history.
Result<Seconds> equivalent_age(const TemperatureHistory& history, Seconds until,
                               const SettingRate& rate = {});

/// Temperature above a datum, times time.
struct Maturity {
  double degree_seconds = 0.0;
};
constexpr double in_degree_hours(Maturity m) {
  return m.degree_seconds / 3600.0;
}
constexpr double in_degree_days(Maturity m) {
  return m.degree_seconds / 86400.0;
}

/// Nurse-Saul maturity from 0 to a time over a history.
Result<Maturity> nurse_saul(const TemperatureHistory& history, Seconds until,
                            Celsius datum = Celsius{0.0});

}  // namespace rb::trade
