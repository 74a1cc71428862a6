#include "pour/outlook/reckon.h"

#include <algorithm>

namespace rb {

namespace {

std::optional<Velocity> recent_rise(const ElementState& there) {
  for (auto lift = there.lifts.rbegin(); lift != there.lifts.rend(); ++lift) {
    Velocity fastest;
    for (std::size_t bay = 0; bay < lift->top.size(); ++bay) {
      const Length gained = lift->top[bay] - lift->bottom[bay];
      const Seconds span = lift->bays[bay].read.value_or(lift->started) - lift->began(bay);
      if (span >= seconds(60)) fastest = std::max(fastest, rate(gained, span));
    }
    if (fastest > Velocity{}) return fastest;
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
  for (std::size_t bay = 0; bay < tops.size(); ++bay) {
    if (lift->bay_ended[bay] || lift->empty(bay)) continue;
    const BayOfLift& placed = lift->bays[bay];
    const bool unread = placed.started && !placed.read;  // it fills since concrete came to it
    const Seconds gone = now - (unread ? *placed.started : lift->last_reading);
    if (gone <= Seconds{0}) continue;
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
