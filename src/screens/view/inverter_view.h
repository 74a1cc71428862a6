// The inverters as the screens show them: how each was set, and what it feeds now.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"

namespace rb::screens {

struct InverterView {
  InverterId inverter{};
  std::optional<Frequency> speed{};  ///< as set last
  std::size_t motors_on = 0;         ///< running on it now
  std::optional<Moment> tripped{};   ///< and nothing has run on it since
};

/// As the plan's.
std::vector<InverterView> make_inverter_views(const PourState& state);

}  // namespace rb::screens
