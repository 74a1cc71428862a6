#include "pour/places.h"

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

BayRange bay_range(const Element& element, std::optional<int> bay) {
  if (!bay) return {0, element.bays.size()};
  const auto index = static_cast<std::size_t>(*bay) - 1;
  return {index, index + 1};
}

}  // namespace rb
