#include "pour/plan/serves.h"

#include "pour/plan/row_reach.h"

namespace rb {

std::vector<int> lifts_in_reach(const Row& row, const Element& element) {
  std::vector<int> lifts;
  const Length reach = reach_up(element, row);
  Length bottom;
  for (std::size_t i = 0; i < element.lifts.size(); ++i) {
    const Length top = element.lifts[i];
    if (row.z + reach > bottom + millimetres(1) && row.z - reach < top - millimetres(1)) {
      lifts.push_back(static_cast<int>(i) + 1);
    }
    bottom = top;
  }
  return lifts;
}

}  // namespace rb
