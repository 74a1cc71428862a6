// How fast the fresh surface of a slab dries, by the weather read on the site.
#pragma once

#include <optional>

#include "pour/log/state.h"
#include "trade/concrete/evaporation.h"

namespace rb {

/// The fastest a slab dried while nothing shielded it: from its first concrete to its first curing,
/// else to the late set of its last concrete, up to a moment. A weather reading holds until the
/// next. The concrete is as warm as the warmest of the tests so far and the latest reading in it;
/// one that nobody measured is taken warm, as for its set (temp_high, else the warmer of the mix's
/// reference and the air; our own choice).
struct Drying {
  trade::Evaporation rate;
  Seconds at{};
  Celsius concrete, air;
  double humidity = 0;  ///< per cent
  Velocity wind;
};
/// None: no concrete, or no reading with humidity and wind held over it, or the element is no slab.
std::optional<Drying> fastest_drying(const PourState& state, std::size_t element, Seconds until);

}  // namespace rb
