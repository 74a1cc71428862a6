#include "trade/pressure/rerun_wait.h"

#include <algorithm>

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

namespace {

// The latest that concrete which came from one moment to another sets. Within a step of the time to
// set the last to come is the last to set.
Seconds last_to_set(std::span<const SetStep> sets, Seconds from, Seconds to) {
  Seconds latest = from;
  for (std::size_t i = 0; i < sets.size(); ++i) {
    const Seconds begins = i == 0 ? from : std::max(from, sets[i].from);
    const Seconds ends = i + 1 < sets.size() ? std::min(to, sets[i + 1].from) : to;
    if (ends >= begins) latest = std::max(latest, sets[i].sets(ends));
  }
  return latest;
}

}  // namespace

std::optional<Seconds> wait_before_running(const TopCurve& top, std::span<const SetStep> sets,
                                           const HeadLimit& limit, Seconds at) {
  const Length low = std::max(Length{}, limit.low);
  const Length standing = top.at(at);
  // Concrete from here up brings no more than the rating.
  const Length borne = standing - liquid_depth(limit.unit_weight, limit.rating);
  if (borne <= low + kSamePlace) return Seconds{};
  if (borne >= std::min(limit.high, standing)) return std::nullopt;
  const auto from = low > Length{} ? top.reached(low) : top.covered(low);
  const auto to = top.reached(borne);
  if (!from || !to) return std::nullopt;  // cannot be: concrete stands above both
  return std::max(Seconds{}, last_to_set(sets, std::min(*from, *to), *to) - at);
}

}  // namespace rb::trade
