#include "screens/view/pressure_view.h"

#include <algorithm>

#include "base/limits.h"
#include "pour/outlook/form_pressure.h"

namespace rb::screens {

std::vector<PressureView> make_pressure_views(const PourState& state, std::size_t element,
                                              Seconds now) {
  std::vector<PressureView> views;
  const Element& planned = state.plan->elements[element];
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    const auto there = form_pressure(state, element, bay, std::min(now, state.last));
    if (!there || there->top <= Length{}) continue;
    PressureView view{.bay = bay,
                      .top = there->top,
                      .profile = there->profile,
                      .greatest = there->profile.greatest(),
                      .rise = there->rise,
                      .rating = planned.form_rating,
                      .no_method = there->no_method.has_value()};
    for (const std::size_t row : there->rows) view.rows.push_back(planned.rows[row].id.text);
    view.over = view.rating && over(view.greatest.pressure, *view.rating);
    views.push_back(std::move(view));
  }
  std::stable_sort(views.begin(), views.end(), [](const PressureView& a, const PressureView& b) {
    return a.greatest.pressure > b.greatest.pressure;
  });
  return views;
}

}  // namespace rb::screens
