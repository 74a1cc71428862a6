#include "trade/pressure/pressure_profile.h"

#include <algorithm>

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

Pressure PressureProfile::at(Length z) const {
  Pressure most;
  for (const PressurePart& part : parts) {
    if (z < part.from || z > part.to) continue;
    const double share = (z - part.from) / (part.to - part.from);
    most = std::max(most, part.lower + (part.upper - part.lower) * share);
  }
  return most;
}

GreatestPressure PressureProfile::greatest() const {
  GreatestPressure most;
  for (const PressurePart& part : parts) {  // falls or stands still upwards within a part
    if (part.lower < most.pressure) continue;
    most = {part.lower, part.lower == part.upper ? part.to : part.from, part.why};
  }
  return most;
}

PressureProfile pressure_profile(UnitWeight unit_weight, Length top, std::optional<Pressure> method,
                                 std::optional<Length> shaken_to) {
  PressureProfile profile;
  const auto liquid_at = [&](Length z) { return full_liquid_head(unit_weight, top - z); };
  const auto add = [&](Length from, Length to, Pressure lower, Pressure upper, PressureFrom why) {
    if (to > from) profile.parts.push_back({from, to, lower, upper, why});
  };
  const Length base;
  if (top <= base) return profile;
  // From here up the vibrators' liquid head rules, below it the method.
  const Length shaken = shaken_to ? std::clamp(*shaken_to, base, top) : top;
  if (!method) {
    add(base, shaken, liquid_at(base), liquid_at(shaken), PressureFrom::liquid);
  } else {
    const Length full = std::clamp(top - liquid_depth(unit_weight, *method), base, shaken);
    const Pressure below = std::min(*method, liquid_at(base));
    add(base, full, below, below, PressureFrom::method);
    add(full, shaken, liquid_at(full), liquid_at(shaken), PressureFrom::method);
  }
  add(shaken, top, liquid_at(shaken), Pressure{}, PressureFrom::running_row);
  return profile;
}

}  // namespace rb::trade
