#include "pour/outlook/reckon.h"

#include <algorithm>

namespace rb {

namespace {

std::optional<Velocity> recent_rise(const ElementState& there) {
  for (auto lift = there.lifts.rbegin(); lift != there.lifts.rend(); ++lift) {
    const Seconds span = lift->last_reading - lift->started;
    if (span < seconds(60)) continue;
    Length gained;
    for (std::size_t bay = 0; bay < lift->top.size(); ++bay) {
      gained = std::max(gained, lift->top[bay] - lift->bottom[bay]);
    }
    if (gained > metres(0)) return rate(gained, span);
  }
  return {};
}

}  // namespace

std::vector<std::optional<Length>> reckoned_tops(const PourState& state, std::size_t element,
                                                 Seconds now) {
  const ElementState& there = state.elements[element];
  const auto& planned = state.plan->elements[element].lifts;
  std::vector<std::optional<Length>> tops(there.tops.size());
  const LiftState* lift = state.placing(element);
  const auto rise = recent_rise(there);
  if (lift == nullptr || !rise) return tops;
  const Seconds gone = now - lift->last_reading;
  if (gone <= Seconds{0}) return tops;
  for (std::size_t bay = 0; bay < tops.size(); ++bay) {
    if (lift->bay_ended[bay]) continue;
    const Length standing = there.tops[bay].standing();
    Length about = standing + metres(rise->value() * gone.count());
    if (lift->lift >= 1 && static_cast<std::size_t>(lift->lift) <= planned.size()) {
      const Length ceiling = planned[static_cast<std::size_t>(lift->lift) - 1];
      about = std::min(about, std::max(ceiling, standing));
    }
    tops[bay] = about;
  }
  return tops;
}

}  // namespace rb
