// How fast the surface of a slab dries: Menzel's formula as Uno wrote it down for ACI 305R (both
// from memory),
//   E = 5 ([Tc + 18]^2.5 - r [Ta + 18]^2.5) (V + 4) 1e-6  kg/m2/h,
// Tc and Ta in degC, r the relative humidity of 0 to 1, V the wind in km/h.
#pragma once

#include <compare>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

/// Relative humidity of the air, of 0 to 1.
struct Humidity {
  double share = 0;
  constexpr auto operator<=>(const Humidity&) const = default;
};
/// Water that goes off a surface.
struct Evaporation {
  double kg_m2_h = 0;
  // NOLINTNEXTLINE(modernize-use-nullptr): none there
  constexpr auto operator<=>(const Evaporation&) const = default;
};

/// From which on plastic concrete may crack for it: the usual alarm, ACI 305R (from memory).
inline constexpr Evaporation kCracks{1.0};

struct Weather {
  Celsius air;
  Humidity humidity;
  Velocity wind;  ///< half a metre over the slab
};

/// Never below 0 (dew). Input error for temperatures outside -18 to 80 degC, a humidity outside 0
/// to 1, a wind outside 0 to 200 km/h.
Result<Evaporation> evaporation(Celsius concrete, const Weather& weather);

}  // namespace rb::trade
