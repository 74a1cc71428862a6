#include "screens/view/review_view.h"

#include "pour/log/log_entry.h"
#include "screens/view/strip_view.h"

namespace rb::screens {

std::vector<GroupView> make_group_views(const PourState& state, const CheckReport& report) {
  std::vector<GroupView> views;
  const Review review = review_of(state, report);
  views.reserve(review.groups.size());
  for (const ReviewedGroup& group : review.groups) {
    GroupView view{.key = group.key,
                   .figures = group.figures,
                   .standing = group.standing,
                   .came_back = group.came_back()};
    if (group.last) {
      const ReviewState& word = state.reviews[*group.last];
      const Event& event = state.log[word.ref].event;
      view.by = person_name(*state.plan, event.by);
      view.at = event.at;
      view.why = word.why;
    }
    views.push_back(std::move(view));
  }
  return views;
}

}  // namespace rb::screens
