#include "pour/outlook/insertions.h"

#include <algorithm>

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

std::optional<trade::Band> worked_by(const PourState& state, const InsertState& insert,
                                     std::size_t bay, const std::vector<trade::SetStep>& sets) {
  const Limits& limits = state.plan->limits;
  const ElementState& there = state.elements[insert.element];
  const auto lift = latest_lift(there, insert.what.lift);
  if (!lift || insert.what.each < limits.insert_least.value) return std::nullopt;
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
  for (const InsertState& insert : state.inserts) {
    if (insert.element != element) continue;
    for (std::size_t bay = 0; bay < tops.size(); ++bay) {
      if (insert.bay && *insert.bay != bay) continue;
      const auto band = worked_by(state, insert, bay, sets);
      if (!band) continue;
      const Length set = trade::set_by(tops[bay], sets, insert.at + insert.what.each);
      bays[bay].push_back({std::max(band->from, set), band->to});
    }
  }
  return bays;
}

}  // namespace rb
