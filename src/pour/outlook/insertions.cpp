#include "pour/outlook/insertions.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/limits.h"
#include "pour/log/places.h"
#include "trade/dose/set_height.h"

namespace rb {

const trade::InternalVibrator& group_of(const InsertState& insert) {
  return trade::internal_vibrators().at(static_cast<std::size_t>(insert.what.group) - 1);
}

Length widest_apart(const Plan& plan, const InsertState& insert) {
  return trade::mean_radius(group_of(insert)) * plan.limits.insert_spacing_factor.value;
}

bool before_close(const PourState& state, const InsertState& insert) {
  return !state.closed || insert.at <= state.clock(*state.closed);
}

PointsWanted points_wanted(const Plan& plan, const Element& element, std::size_t bay,
                           Length spacing, Length from, Length to) {
  const Length along = element.bays[bay];
  const Length across = element.through();
  const double by_area = std::ceil(element.bay_area(bay) / (spacing * spacing) - 1e-9);
  const double in_line = std::ceil(std::max(along, across) / spacing - 1e-9);
  const Length layer = plan.limits.insert_layer.value;
  PointsWanted wanted{std::max(by_area, in_line), std::ceil((to - from) / layer - 1e-9)};
  if (from > Length{}) return wanted;
  for (const Beam& beam : element.beams) {
    const double in_row = std::ceil(element.beam_in(beam, bay) / spacing - 1e-9);
    const double rows = std::ceil(beam.width / spacing - 1e-9);
    wanted.in_beams += in_row * rows * std::ceil(beam.depth / layer - 1e-9);
  }
  return wanted;
}

namespace {

// What is told of a lift's points in a bay.
struct PointsTold {
  double points = 0;
  bool all = true;  // each insertion told how many
};
using ByLiftAndBay = std::map<std::pair<int, std::size_t>, PointsTold>;

ByLiftAndBay points_told(const PourState& state, std::size_t element) {
  ByLiftAndBay told;
  for (const InsertState& insert : state.inserts) {
    if (insert.element != element || !before_close(state, insert)) continue;
    for (std::size_t bay = 0; bay < state.elements[element].tops.size(); ++bay) {
      if (insert.bay && *insert.bay != bay) continue;
      PointsTold& there = told[{insert.what.lift, bay}];
      there.points += insert.what.points.value_or(0);
      there.all = there.all && insert.what.points;
    }
  }
  return told;
}

// Whether they are told, and fewer than the lift wants there.
bool points_short(const PourState& state, const InsertState& of, std::size_t bay,
                  const PointsTold& told) {
  const ElementState& there = state.elements[of.element];
  const auto lift = latest_lift(there, of.what.lift);
  if (!lift || !told.all) return false;
  return told.points < points_wanted(*state.plan, state.plan->elements[of.element], bay,
                                     widest_apart(*state.plan, of), there.lifts[*lift].bottom[bay],
                                     there.lifts[*lift].top[bay])
                           .all();
}

}  // namespace

std::optional<trade::Band> worked_by(const PourState& state, const InsertState& insert,
                                     std::size_t bay, const std::vector<trade::SetStep>& sets) {
  const Limits& limits = state.plan->limits;
  const ElementState& there = state.elements[insert.element];
  const auto lift = latest_lift(there, insert.what.lift);
  if (!lift || insert.what.each < limits.insert_least.value || !before_close(state, insert)) {
    return std::nullopt;
  }
  if (over(insert.what.spacing, widest_apart(*state.plan, insert))) return std::nullopt;
  const Length top = there.tops[bay].at(insert.at);
  const Length deepest = top - limits.insert_layer.value - limits.knit_depth.value;
  const Length low = there.lifts[*lift].bottom[bay] - insert.what.depth_below;
  const trade::Band band{std::max({Length{}, low, deepest}), top};
  if (band.to <= band.from) return std::nullopt;
  const Length set = trade::set_by(there.tops[bay], sets, insert.at + insert.what.each);
  if (set > (band.from + band.to) * 0.5 + trade::kSamePlace) return std::nullopt;
  return band;
}

std::vector<std::vector<trade::Band>> healed(const PourState& state, std::size_t element,
                                             const std::vector<trade::SetStep>& sets) {
  const auto& tops = state.elements[element].tops;
  std::vector<std::vector<trade::Band>> bays(tops.size());
  const ByLiftAndBay told = points_told(state, element);
  for (const InsertState& insert : state.inserts) {
    if (insert.element != element) continue;
    for (std::size_t bay = 0; bay < tops.size(); ++bay) {
      if (insert.bay && *insert.bay != bay) continue;
      const auto band = worked_by(state, insert, bay, sets);
      if (!band || points_short(state, insert, bay, told.at({insert.what.lift, bay}))) continue;
      const Length set = trade::set_by(tops[bay], sets, insert.at + insert.what.each);
      bays[bay].push_back({std::max(band->from, set), band->to});
    }
  }
  return bays;
}

}  // namespace rb
