#include "trade/dose/set_height.h"

#include <algorithm>

namespace rb::trade {

namespace {
// Less than any step of a clock: just before a moment, whatever the rounding of sums.
constexpr Seconds kHair{1e-6};
}  // namespace

std::optional<Seconds> came_and_set(std::span<const SetStep> sets, Seconds at, bool counted_in) {
  if (!counted_in) at -= kHair;
  for (std::size_t i = sets.size(); i-- > 0;) {
    const SetStep& step = sets[i];
    if (step.at && *step.at > at) continue;
    // Within a step what came later sets later.
    const Seconds last = step.at ? at : at - step.to_set;
    if (i > 0 && last < step.from) continue;
    return i + 1 < sets.size() ? std::min(last, sets[i + 1].from) : last;
  }
  return std::nullopt;
}

Length set_by(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  const auto came = came_and_set(sets, at, true);
  return came ? top.at(*came) : Length{};
}

Length set_before(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  const auto came = came_and_set(sets, at, false);
  return came ? top.at(*came) : Length{};
}

}  // namespace rb::trade
