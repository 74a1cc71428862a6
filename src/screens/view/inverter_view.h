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
  Current gives{};                   ///< in each phase
  /// Drawn now, its internal vibrators with the motors; none: the plan tells no motor's amps.
  std::optional<Current> drawn{};
};

/// How many settings are quick to take again.
inline constexpr std::size_t kSpeedChoices = 3;
/// What inverters were set to last, the latest first, each once; then what the motors bear.
std::vector<Frequency> last_speeds(const PourState& state, std::size_t most);

/// As the plan's.
std::vector<InverterView> make_inverter_views(const PourState& state);

}  // namespace rb::screens
