// The pressure on a form up its height at one moment: the greatest that may be there.
//   Standing concrete: the method's greatest pressure, never over the full liquid head at that
//   depth: p(z) = min(method, unit weight x (top - z)). The shape is that of all three methods
//   (read for CIRIA 108 and the 1980 DIN 18218 in public pages, from memory for ACI 347). Where
//   form vibrators run: a full liquid head from the top down to their lower reach, whatever the
//   method says (DIN 18218 and a public concrete lexicon: read). Below that the method's again: the
//   greatest pressure of the two is at the reach either way. Where the method does not hold: a full
//   liquid head all the way down.
#pragma once

#include <optional>
#include <vector>

#include "base/quantity.h"

namespace rb::trade {

/// What a pressure comes from.
enum class PressureFrom { method, running_row, liquid };

/// A stretch of height over which the pressure runs straight.
struct PressurePart {
  Length from, to;        ///< upwards
  Pressure lower, upper;  ///< at `from` and at `to`
  PressureFrom why = PressureFrom::method;
  bool operator==(const PressurePart&) const = default;
};

struct GreatestPressure {
  Pressure pressure;
  Length z;  ///< the highest place that has it
  PressureFrom why = PressureFrom::method;
  bool operator==(const GreatestPressure&) const = default;
};

struct PressureProfile {
  std::vector<PressurePart> parts;  ///< from the base up to the top of the concrete, no gaps
  [[nodiscard]] Pressure at(Length z) const;  ///< the greater one where two parts meet
  [[nodiscard]] GreatestPressure greatest() const;
};

/// Concrete standing up to `top`; `method`: the method's greatest pressure, none where it does not
/// hold; `shaken_to`: the lowest height that running vibrators reach (below the base counts as the
/// base), none where none run. Nothing in it while there is no concrete.
PressureProfile pressure_profile(UnitWeight unit_weight, Length top, std::optional<Pressure> method,
                                 std::optional<Length> shaken_to);

}  // namespace rb::trade
