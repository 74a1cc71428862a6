#include "pour/log/places.h"

#include <algorithm>

namespace rb {

std::optional<std::size_t> element_index(const Plan& plan, const ElementId& id) {
  const Element* found = plan.find(id);
  if (found == nullptr) return std::nullopt;
  return static_cast<std::size_t>(found - plan.elements.data());
}

std::optional<std::size_t> row_index(const Element& element, const RowPlace& place) {
  const Row* found = element.find_row(place.row, place.side);
  if (found == nullptr) return std::nullopt;
  return static_cast<std::size_t>(found - element.rows.data());
}

std::optional<std::size_t> inverter_index(const Plan& plan, const InverterId& id) {
  const auto found = std::find_if(plan.power.begin(), plan.power.end(),
                                  [&](const Inverter& inverter) { return inverter.id == id; });
  if (found == plan.power.end()) return std::nullopt;
  return static_cast<std::size_t>(found - plan.power.begin());
}

std::optional<std::pair<std::size_t, std::size_t>> row_at(const PourState& state,
                                                          const RowPlace& place) {
  const auto& elements = state.plan->elements;
  constexpr std::size_t kLastRuns = 4;
  const std::size_t runs = state.runs.size();
  for (std::size_t i = 0; i < std::min(kLastRuns, runs); ++i) {
    const RunState& run = state.runs[runs - 1 - i];
    const Row& row = elements[run.element].rows[run.row];
    if (row.id == place.row && row.side == place.side &&
        elements[run.element].id == place.element) {
      return std::pair{run.element, run.row};
    }
  }
  const auto element = element_index(*state.plan, place.element);
  if (!element) return std::nullopt;
  const auto row = row_index(elements[*element], place);
  if (!row) return std::nullopt;
  return std::pair{*element, *row};
}

std::optional<std::size_t> latest_lift(const ElementState& element, int number) {
  for (std::size_t i = element.lifts.size(); i-- > 0;) {
    if (element.lifts[i].lift == number) return i;
  }
  return std::nullopt;
}

BayRange bay_range(const Element& element, std::optional<int> bay) {
  if (!bay) return {0, element.bays.size()};
  const auto index = static_cast<std::size_t>(*bay) - 1;
  return {index, index + 1};
}

}  // namespace rb
