#include "screens/row_view.h"

#include <algorithm>

#include "pour/form.h"
#include "pour/next_steps.h"
#include "pour/reckon.h"

namespace rb::screens {

namespace {

struct Reach {
  Length low, high, left, right;
};

Reach reach_of(const Row& row) {
  Reach reach{row.z, row.z, {}, {}};
  bool first = true;
  for (const Motor& motor : row.motors) {
    reach.low = std::min(reach.low, row.z - motor.reach_z);
    reach.high = std::max(reach.high, row.z + motor.reach_z);
    const Length left = motor.x - motor.reach_x;
    const Length right = motor.x + motor.reach_x;
    reach.left = first ? left : std::min(reach.left, left);
    reach.right = first ? right : std::max(reach.right, right);
    first = false;
  }
  reach.low = std::max(reach.low, metres(0));
  return reach;
}

}  // namespace

std::vector<RowView> make_row_views(const PourState& state, std::size_t element, Moment now) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const Limits& limits = state.plan->limits;
  const Seconds at = state.clock(now);
  const Seconds since = there.lifts.empty() ? Seconds{} : there.lifts.back().started;
  const int lift = there.lifts.empty() ? 1 : there.lifts.back().lift;
  std::vector<Length> tops;
  const auto about = reckoned_tops(state, element, at);
  for (std::size_t bay = 0; bay < about.size(); ++bay) {
    const Length standing = there.tops[bay].at(at);
    tops.push_back(std::max(standing, about[bay].value_or(standing)));
  }
  std::vector<RowView> views;
  for (std::size_t i = 0; i < planned.rows.size(); ++i) {
    const Row& row = planned.rows[i];
    const Reach reach = reach_of(row);
    RowView view{.row = i,
                 .place = {planned.id, row.side, row.id},
                 .z = row.z,
                 .reach_low = reach.low,
                 .reach_high = reach.high,
                 .reach_left = std::max(reach.left, metres(0)),
                 .reach_right = std::min(reach.right, planned.length),
                 .low = limits.dose_min.value,
                 .high = limits.dose_max.value,
                 .rating = planned.form_rating};
    view.serves_lift = std::find(row.serves.begin(), row.serves.end(), lift) != row.serves.end();
    if (const RunState* run = state.running(element, i)) {
      view.running_since = state.moment(run->from);
    }
    view.ran = ran_since(state, element, i, since, at);
    if (view.ran >= view.high && view.ran > view.low) {
      view.word = view.ran > view.high ? DoseWord::over : DoseWord::enough;
      view.to_go = view.ran - view.high;
    } else if (view.ran >= view.low) {
      view.word = DoseWord::enough;
    } else if (view.ran > Seconds{0} || view.running_since) {
      view.word = DoseWord::more;
      view.to_go = view.low - view.ran;
    }
    const HangState* hung = state.hanging(element, i);
    if (hung != nullptr) {
      view.hung = true;
      view.cables = hung->cables;
    }
    for (std::size_t m = 0; m < row.motors.size(); ++m) {
      view.spots.push_back({row.motors[m].x, hung != nullptr && hung->places[m]});
    }
    std::sort(view.spots.begin(), view.spots.end(),
              [](const MotorSpot& a, const MotorSpot& b) { return a.x < b.x; });
    // Before it runs, the greater of what was read and what it will be about by now: the top is
    // read now and then, the concrete comes on.
    const Pressure read = head_on_row(state, element, i, at);
    const Pressure head = std::max(read, head_on_row(state, element, i, tops));
    if (head > kilopascals(0)) view.head = head;
    view.head_about = head > read;
    const bool nothing = !view.head;
    if (view.head && view.rating && *view.head > *view.rating) {
      view.caution = RowCaution::head_over;
    } else if (!view.hung) {
      view.caution = RowCaution::not_hung;
    } else if (!view.cables) {
      view.caution = RowCaution::cables_open;
    } else if (nothing) {
      view.caution = RowCaution::no_concrete;
    }
    views.push_back(std::move(view));
  }
  std::stable_sort(views.begin(), views.end(), [](const RowView& a, const RowView& b) {
    return std::pair{b.z, a.place.side} < std::pair{a.z, b.place.side};
  });
  return views;
}

}  // namespace rb::screens
