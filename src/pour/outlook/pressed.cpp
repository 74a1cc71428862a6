#include "pour/outlook/pressed.h"

#include <algorithm>

#include "trade/dose/set_height.h"

namespace rb {

namespace {

// Whether nobody said when the bay of the lift that came to a moment was begun.
bool unsaid(const ElementState& there, std::size_t bay, Seconds at) {
  const auto lift = std::find_if(there.lifts.rbegin(), there.lifts.rend(),
                                 [&](const LiftState& l) { return l.started < at; });
  return lift != there.lifts.rend() && lift->start_missing(bay);
}

// The height of latest_top() at a moment.
Length latest_at(const ElementState& there, std::size_t bay, Seconds at) {
  const auto& points = there.tops[bay].points();
  const auto next =
      std::upper_bound(points.begin(), points.end(), at,
                       [](Seconds m, const trade::SurfacePoint& point) { return m < point.at; });
  if (next == points.end() || next == points.begin() || next->height <= (next - 1)->height ||
      !unsaid(there, bay, next->at)) {
    return there.tops[bay].at(at);
  }
  return (next - 1)->height;
}

}  // namespace

trade::TopCurve latest_top(const ElementState& there, std::size_t bay) {
  trade::TopCurve latest;
  for (const trade::SurfacePoint& point : there.tops[bay].points()) {
    if (point.height > latest.standing() && unsaid(there, bay, point.at)) latest.stand(point.at);
    latest.read(point.at, point.height);
  }
  return latest;
}

std::vector<Length> set_floors(const PourState& state, std::size_t element, Seconds at) {
  const ElementState& there = state.elements[element];
  const auto came = trade::came_and_set(set_steps(state, element, SetSide::late), at, true);
  std::vector<Length> floors(there.tops.size());
  if (!came) return floors;
  for (std::size_t bay = 0; bay < floors.size(); ++bay) floors[bay] = latest_at(there, bay, *came);
  return floors;
}

Length deepest_pressed(const std::vector<BayReached>& bays, const std::vector<Length>& tops,
                       const std::vector<Length>& floors) {
  Length deepest;
  for (const BayReached& there : bays) {
    deepest = std::max(deepest, tops[there.bay] - std::max(there.pressed, floors[there.bay]));
  }
  return deepest;
}

}  // namespace rb
