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

namespace {

std::vector<Length> floors_of(const ElementState& there, const std::vector<trade::SetStep>& sets,
                              Seconds at, bool counted_in) {
  std::vector<Length> floors(there.tops.size());
  const auto came = trade::came_and_set(sets, at, counted_in);
  if (!came) return floors;
  for (std::size_t bay = 0; bay < floors.size(); ++bay) floors[bay] = latest_at(there, bay, *came);
  return floors;
}

// The moments of a run between which depth goes straight up or down: readings, and when what came
// at a reading sets.
std::vector<Seconds> turns_of(const ElementState& there, const std::vector<BayReached>& bays,
                              const std::vector<trade::SetStep>& sets, Seconds from, Seconds to) {
  std::vector<Seconds> turns{to};
  const auto turn = [&](Seconds at) {
    if (at > from && at < to) turns.push_back(at);
  };
  // Readings from one moment to another, both sides beyond.
  const auto readings = [](const trade::TopCurve& top, Seconds after, Seconds until, auto&& each) {
    const auto& points = top.points();
    auto point = std::lower_bound(points.begin(), points.end(), after,
                                  [](const trade::SurfacePoint& p, Seconds m) { return p.at < m; });
    for (; point != points.end() && point->at <= until; ++point) each(point->at);
  };
  for (const BayReached& reached : bays) {
    const trade::TopCurve& top = there.tops[reached.bay];
    readings(top, from, to, turn);
    for (const trade::SetStep& step : sets) {
      if (step.at) continue;
      readings(top, from - step.to_set, to - step.to_set,
               [&](Seconds came) { turn(came + step.to_set); });
    }
  }
  for (const trade::SetStep& step : sets) turn(step.at ? *step.at : step.from + step.to_set);
  return turns;
}

}  // namespace

std::vector<Length> set_floors(const PourState& state, std::size_t element, Seconds at) {
  return set_floors(state.elements[element], set_steps(state, element, SetSide::late), at);
}

std::vector<Length> set_floors(const ElementState& there, const std::vector<trade::SetStep>& late,
                               Seconds at) {
  return floors_of(there, late, at, true);
}

Length deepest_pressed(const PourState& state, std::size_t element,
                       const std::vector<BayReached>& bays, Seconds from, Seconds to) {
  const ElementState& there = state.elements[element];
  from = std::min(from, to);  // a run begun after the close ends before it
  const auto tops_at = [&](Seconds at) {
    std::vector<Length> tops;
    for (const trade::TopCurve& top : there.tops) tops.push_back(top.at(at));
    return tops;
  };
  // Set concrete aside it is deepest at the end: nothing there, nothing at all.
  const std::vector<Length> none(there.tops.size());
  if (deepest_pressed(bays, tops_at(to), none) <= Length{}) return {};
  const auto sets = set_steps(state, element, SetSide::late);
  Length deepest = deepest_pressed(bays, tops_at(from), floors_of(there, sets, from, true));
  if (to <= from) return deepest;
  for (const Seconds at : turns_of(there, bays, sets, from, to)) {
    deepest =
        std::max(deepest, deepest_pressed(bays, tops_at(at), floors_of(there, sets, at, false)));
  }
  return deepest;
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
