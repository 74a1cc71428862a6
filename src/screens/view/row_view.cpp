#include "screens/view/row_view.h"

#include <algorithm>

#include "pour/outlook/run_wanted.h"
#include "pour/plan/row_reach.h"

namespace rb::screens {

namespace {

// How it stands to its band, and how far from the end it is at.
// Seconds of the clock: those of a slow row count for less.
void word_dose(RowView& view, const Limits& limits) {
  const bool begun = view.ran > Seconds{} || view.running_since;
  switch (judge_band(view.ran, limits)) {
    case BandVerdict::past:
      view.word = DoseWord::over;
      view.to_go = view.ran - view.high;
      break;
    case BandVerdict::within:
      view.word = DoseWord::enough;
      break;
    case BandVerdict::short_of:
    case BandVerdict::none:
      if (begun) view.word = DoseWord::more;
      if (begun) view.to_go = (view.low - view.ran) / view.counts;
      break;
  }
}

}  // namespace

std::vector<RowView> make_row_views(const PourState& state, std::size_t element, Moment now) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const Limits& limits = state.plan->limits;
  const Seconds at = state.clock(now);
  const int lift = there.lifts.empty() ? 1 : there.lifts.back().lift;
  const auto answers = run_answers(state, element, at);
  std::vector<RowView> views;
  for (std::size_t i = 0; i < planned.rows.size(); ++i) {
    const Row& row = planned.rows[i];
    const RowSpan reach = span_of(planned, row);
    RowView view{.row = i,
                 .place = {planned.id, row.side, row.id},
                 .z = row.z,
                 .reach_low = reach.low,
                 .reach_high = reach.high,
                 .reach_left = reach.left,
                 .reach_right = reach.right,
                 .low = limits.dose_min.value,
                 .high = limits.dose_max.value,
                 .rating = planned.form_rating};
    view.serves_lift = serves(row, lift);
    if (const RunState* run = state.running(element, i)) {
      view.running_since = state.moment(run->from);
    }
    view.ran = answers[i].ran;
    view.counts = answers[i].counts;
    word_dose(view, limits);
    const HangState* hung = state.hanging(element, i);
    if (hung != nullptr) {
      view.hung = true;
      view.cables = hung->cables;
    }
    for (std::size_t m = 0; m < row.motors.size(); ++m) {
      view.spots.push_back({row.motors[m].x, hung != nullptr && hung->places[m], row.motors[m].id});
    }
    std::sort(view.spots.begin(), view.spots.end(),
              [](const MotorSpot& a, const MotorSpot& b) { return a.x < b.x; });
    const RowHead& head = answers[i].head;
    if (head.reached) view.head = head.head;
    view.head_about = head.about;
    view.wait = answers[i].wait;
    if (!state.closed) view.gates = not_passed(gates_of_run(state, element, i, answers[i]));
    const bool nothing = !view.head;
    if (head.verdict == HeadVerdict::over) {
      view.caution = RowCaution::head_over;
    } else if (!view.hung) {
      view.caution = RowCaution::not_hung;
    } else if (!view.cables) {
      view.caution = RowCaution::cables_open;
    } else if (nothing) {
      view.caution = RowCaution::no_concrete;
    }
    // Said while it runs, before all else: some of its motors stand still.
    if (const RunState* run = state.running(element, i); run != nullptr && !run->trips.empty()) {
      view.caution = RowCaution::tripped;
    }
    views.push_back(std::move(view));
  }
  std::stable_sort(views.begin(), views.end(), [](const RowView& a, const RowView& b) {
    return std::pair{b.z, a.place.side} < std::pair{a.z, b.place.side};
  });
  return views;
}

}  // namespace rb::screens
