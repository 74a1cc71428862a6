#include "trade/dose/set_height.h"

#include <algorithm>

namespace rb::trade {

namespace {

Length height_at(const TopCurve& top, std::optional<Seconds> came) {
  return came ? top.at(*came) : Length{};
}

}  // namespace

std::optional<Seconds> came_and_set(std::span<const SetStep> sets, Seconds at, bool counted_in) {
  for (std::size_t i = sets.size(); i-- > 0;) {
    const SetStep& step = sets[i];
    if (step.at && (counted_in ? *step.at > at : *step.at >= at)) continue;
    // Within a step what came later sets later.
    const Seconds last = step.at ? at : at - step.to_set;
    if (i > 0 && last < step.from) continue;
    return i + 1 < sets.size() ? std::min(last, sets[i + 1].from) : last;
  }
  return std::nullopt;
}

Length set_by(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  return height_at(top, came_and_set(sets, at, true));
}

Length set_before(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  return height_at(top, came_and_set(sets, at, false));
}

}  // namespace rb::trade
