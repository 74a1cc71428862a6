// What an element's form bears now, up its height, as the screens show it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pour/log/state.h"
#include "trade/pressure/pressure_profile.h"

namespace rb::screens {

struct PressureView {
  std::size_t bay = 0;
  Length top{};
  trade::PressureProfile profile{};
  trade::GreatestPressure greatest{};
  std::vector<std::string> rows{};  ///< running, that reach into the bay
  Velocity rise{};                  ///< the fastest so far
  std::optional<Pressure> rating{};
  bool over = false;       ///< the rating is passed
  bool no_method = false;  ///< the plan's method does not hold: full liquid counts
};

/// By bay that concrete has come to, the one that presses most first. Nothing for a deck.
std::vector<PressureView> make_pressure_views(const PourState& state, std::size_t element,
                                              Seconds now);

}  // namespace rb::screens
