#include "trade/dose/set_height.h"

#include <algorithm>

namespace rb::trade {

namespace {

Length set_height(const TopCurve& top, std::span<const SetStep> sets, Seconds at, bool counted_in) {
  Length highest;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const SetStep& step = sets[i];
    // Within a step what came later sets later.
    Seconds came = step.at ? at : at - step.to_set;
    if (step.at && (counted_in ? *step.at > at : *step.at >= at)) continue;
    if (i > 0 && came < step.from) continue;
    if (i + 1 < sets.size()) came = std::min(came, sets[i + 1].from);
    highest = std::max(highest, top.at(came));
  }
  return highest;
}

}  // namespace

Length set_by(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  return set_height(top, sets, at, true);
}

Length set_before(const TopCurve& top, std::span<const SetStep> sets, Seconds at) {
  return set_height(top, sets, at, false);
}

}  // namespace rb::trade
