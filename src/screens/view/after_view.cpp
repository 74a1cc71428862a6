#include "screens/view/after_view.h"

namespace rb::screens {

std::vector<StripView> make_strip_views(const PourState& state, std::size_t element, Seconds at) {
  std::vector<StripView> views;
  if (element >= state.elements.size()) return views;
  views.reserve(2);
  for (const Side side : {Side::near_side, Side::far_side}) {
    StripView view{.side = side, .verdict = judge_strip(state, element, side, at)};
    if (view.verdict) view.gates = gates_of_strip(*view.verdict);
    views.push_back(std::move(view));
  }
  return views;
}

std::vector<SpecimenView> make_specimen_views(const PourState& state) {
  std::vector<SpecimenView> views;
  for (const TestState& test : state.tests) {
    views.reserve(views.size() + test.what.specimens.size());
    for (const SpecimenId& id : test.what.specimens) {
      SpecimenView view{.specimen = id, .ticket = test.what.ticket, .taken = state.moment(test.at)};
      for (const SpecimenState& broken : state.specimens) {
        if (broken.what.specimen != id) continue;
        view.age_days = broken.what.age_days;
        view.strength = broken.what.strength;
      }
      views.push_back(std::move(view));
    }
  }
  return views;
}

}  // namespace rb::screens
