// Where the concrete stands about now, between two readings of its top.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"

namespace rb {

/// Bay by bay, from the last reading at the rate the concrete came up lately (over the readings of
/// this lift, else of the one before), never above the planned top of the lift. None where no lift
/// is being placed, and where there is nothing to reckon from.
std::vector<std::optional<Length>> reckoned_tops(const PourState& state, std::size_t element,
                                                 Seconds now);

}  // namespace rb
