#include "trade/pressure/pressure.h"

#include <fmt/format.h>

#include "trade/pressure/pressure_aci347.h"
#include "trade/pressure/pressure_ciria108.h"
#include "trade/pressure/pressure_din18218.h"
#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

// The greatest rate between one that holds and one that exceeds, halving until no double is left
// between them, or the rate is too small for any clock to show.
template <class Exceeds>
Velocity last_before(const Exceeds& exceeds, Velocity holds, Velocity over) {
  const Velocity nothing = quantity_of<Velocity>(1e-18);
  while (over > nothing) {
    const Velocity middle = holds + (over - holds) / 2.0;
    if (middle <= holds || middle >= over) break;
    (exceeds(middle) ? over : holds) = middle;
  }
  return holds;
}

}  // namespace

Result<Pressure> method_pressure(PressureMethod method, const PressureCase& c, Velocity rise) {
  switch (method) {
    case PressureMethod::aci347:
      return aci347_pressure(c, rise);
    case PressureMethod::ciria108:
      return ciria108_pressure(c, rise);
    case PressureMethod::din18218:
      break;
  }
  return din18218_pressure(c, rise);
}

Result<std::optional<Velocity>> rise_for_rating(PressureMethod method, const PressureCase& c,
                                                Pressure rating) {
  if (auto fault = fault_of(c)) return Failed(*std::move(fault));
  if (auto fault = outside(said("form pressure"), {{said("form rating"), in_kilopascals(rating),
                                                    0.001, 10000.0, "kPa"}})) {
    return Failed(*std::move(fault));
  }
  if (full_liquid_head(c.unit_weight, c.pour_height) <= rating) return std::nullopt;

  const Velocity still = metres_per_hour(0.0);
  const auto least = method_pressure(method, c, still);
  if (!least) return Failed(least.error());
  if (*least > rating) return still;
  const auto exceeds = [&](Velocity rise) {
    const auto pressure = method_pressure(method, c, rise);
    return !pressure || *pressure > rating;
  };
  // At the fastest rate every method ends at the liquid head or refuses.
  return last_before(exceeds, still, kFastestRise);
}

std::optional<std::string> vibration_caution(PressureMethod method, const PressureCase& c) {
  if (!c.external_vibration) return std::nullopt;
  return fmt::format(
      "{} reduces the pressure for internal vibration only. Where external vibrators run, assume a "
      "full liquid head over the height they reach, and ask the form designer",
      to_text(method));
}

}  // namespace rb::trade
