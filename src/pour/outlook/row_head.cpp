#include "pour/outlook/row_head.h"

#include <algorithm>

#include "pour/outlook/pressed.h"
#include "pour/outlook/reckon.h"

namespace rb {

namespace {

bool in_reach(const std::vector<BayReached>& bays, const std::vector<Length>& tops) {
  return std::any_of(bays.begin(), bays.end(),
                     [&](const BayReached& reached) { return tops[reached.bay] > reached.low; });
}

}  // namespace

std::vector<RowHead> heads_now(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const auto& standing = state.elements[element].tops;
  const auto reckoned = reckoned_tops(state, element, at);
  std::vector<Length> read, about;
  for (std::size_t bay = 0; bay < reckoned.size(); ++bay) {
    read.push_back(standing[bay].at(at));
    about.push_back(std::max(read.back(), reckoned[bay].value_or(read.back())));
  }
  const UnitWeight weight = heaviest(state, at);
  const auto floors = set_floors(state, element, at);
  std::vector<RowHead> heads;
  for (std::size_t row = 0; row < planned.rows.size(); ++row) {
    const auto bays = bays_reached(planned, planned.rows[row]);
    const Length deep = deepest_pressed(bays, read, floors);
    const Length deeper = deepest_pressed(bays, about, floors);
    RowHead head{weight * deeper, deeper > deep, HeadVerdict::unrated};
    head.verdict = judge_head(planned, head.head);
    head.reached = in_reach(bays, about);
    heads.push_back(head);
  }
  return heads;
}

}  // namespace rb
