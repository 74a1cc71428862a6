#include "pour/outlook/pressed.h"

#include <algorithm>

#include "trade/dose/set_height.h"

namespace rb {

std::vector<BayReached> bays_pressed(const Element& element, std::size_t row) {
  std::vector<BayReached> pressed;
  for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
    if (const auto low = lowest_pressed(element, element.rows[row], bay)) {
      pressed.push_back({bay, *low});
    }
  }
  return pressed;
}

trade::TopCurve latest_top(const ElementState& there, std::size_t bay) {
  const auto missing = [&](const LiftState& lift) { return lift.start_missing(bay); };
  if (std::none_of(there.lifts.begin(), there.lifts.end(), missing)) return there.tops[bay];
  const auto unsaid = [&](Seconds at) {
    const auto lift = std::find_if(there.lifts.rbegin(), there.lifts.rend(),
                                   [&](const LiftState& l) { return l.started < at; });
    return lift != there.lifts.rend() && missing(*lift);
  };
  trade::TopCurve latest;
  for (const trade::SurfacePoint& point : there.tops[bay].points()) {
    if (point.height > latest.standing() && unsaid(point.at)) latest.stand(point.at);
    latest.read(point.at, point.height);
  }
  return latest;
}

std::vector<Length> set_floors(const PourState& state, std::size_t element, Seconds at) {
  const ElementState& there = state.elements[element];
  const auto sets = set_steps(state, element, SetSide::late);
  std::vector<Length> floors;
  for (std::size_t bay = 0; bay < there.tops.size(); ++bay) {
    floors.push_back(trade::set_by(latest_top(there, bay), sets, at));
  }
  return floors;
}

Length deepest_pressed(const std::vector<BayReached>& bays, const std::vector<Length>& tops,
                       const std::vector<Length>& floors) {
  Length deepest;
  for (const BayReached& pressed : bays) {
    deepest = std::max(deepest, tops[pressed.bay] - std::max(pressed.low, floors[pressed.bay]));
  }
  return deepest;
}

}  // namespace rb
