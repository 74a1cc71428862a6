#include "pour/outlook/row_head.h"

#include <algorithm>

#include "pour/outlook/form.h"
#include "pour/outlook/reckon.h"

namespace rb {

std::vector<RowHead> heads_now(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const auto& standing = state.elements[element].tops;
  const auto reckoned = reckoned_tops(state, element, at);
  std::vector<Length> about;
  for (std::size_t bay = 0; bay < reckoned.size(); ++bay) {
    const Length read = standing[bay].at(at);
    about.push_back(std::max(read, reckoned[bay].value_or(read)));
  }
  std::vector<RowHead> heads;
  for (std::size_t row = 0; row < planned.rows.size(); ++row) {
    const Pressure read = head_on_row(state, element, row, at);
    const Pressure head = std::max(read, head_on_row(state, element, row, about, at));
    heads.push_back({head, head > read, judge_head(planned, head)});
  }
  return heads;
}

}  // namespace rb
