#include "screens/view/pours_view.h"

#include <algorithm>

#include "pour/log/origin.h"

namespace rb::screens {

PourCard make_pour_card(const PourState& state) {
  PourCard card{.id = state.pour,
                .site = state.plan->site,
                .name = state.plan->name,
                .opened = state.zero,
                .closed = state.closed};
  card.plan = state.plan;
  card.from_script = origin_of(state).from_script();
  for (std::size_t i = 0; i < state.elements.size(); ++i) {
    const Element& element = state.plan->elements[i];
    card.lifts_planned += static_cast<int>(element.lifts.size());
    card.lifts_done += static_cast<int>(state.elements[i].lifts.size());
    if (state.placing(i) != nullptr) {
      --card.lifts_done;
      if (!card.placing.empty()) card.placing += ", ";
      card.placing += element.id.text;
    }
    for (std::size_t row = 0; row < element.rows.size(); ++row) {
      if (state.running(i, row) != nullptr) ++card.rows_running;
    }
  }
  return card;
}

void order_cards(std::vector<PourCard>& cards) {
  std::stable_sort(cards.begin(), cards.end(), [](const PourCard& a, const PourCard& b) {
    if (a.closed.has_value() != b.closed.has_value()) return !a.closed;
    return a.opened > b.opened;
  });
}

}  // namespace rb::screens
