// No RUN is ever green over set concrete, an unhung row or an empty bay: through random pours, at
// every event and between, against a reckoning of the test's own.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "../pour/random_placing.h"
#include "../pour/run_truth.h"
#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "screens/view/pour_view.h"

using namespace rb;
using namespace rb::screens;

namespace {

constexpr unsigned kFirstSeed = 7001;
constexpr unsigned kPlacings = 360;
constexpr int kEventsOfOne = 90;

// What was looked at, so that a test which looks at nothing fails.
struct Looked {
  std::map<RunWait, int> waits;
  int green = 0, urged = 0, hang_first = 0;
  int over_set = 0, unhung = 0, empty = 0, moved = 0;  // by the test's own reckoning
  int bays_apart = 0;  ///< green with a bay in reach that is empty or has set
  std::map<ElementKind, int> green_on;
};

bool some_bay_not_fresh(const PourState& state, const Element& element, const RowView& row,
                        std::size_t index, Seconds now) {
  const auto& tops = state.elements[index].tops;
  const auto steps = set_steps(state, index);
  for (std::size_t bay = 0; bay < tops.size(); ++bay) {
    if (element.bay_start(bay) >= row.reach_right - metres(0.01)) continue;
    if (element.bay_start(bay) + element.bays[bay] <= row.reach_left + metres(0.01)) continue;
    const auto came = tops[bay].reached(tops[bay].at(now));
    if (tops[bay].at(now) <= row.reach_low || !came) return true;
    if (trade::sets_at(steps, *came) <= now) return true;
  }
  return false;
}

void look_at_element(const PourState& state, std::size_t index, Moment moment, Looked& looked) {
  const CheckReport none;
  const PourView view = make_pour_view(state, none, index, moment);
  const Element& element = state.plan->elements[index];
  const Seconds now = state.clock(moment);
  for (const RowView& row : view.rows) {
    CAPTURE(row.place.row.text);
    CAPTURE(to_text(moment));
    CAPTURE(static_cast<int>(row.wait));
    const RowTruth truth = row_truth(state, index, row.row, now);
    CAPTURE(truth.hung);
    CAPTURE(truth.concrete);
    CAPTURE(truth.fresh);
    ++looked.waits[row.wait];
    looked.over_set += truth.concrete && !truth.fresh ? 1 : 0;
    looked.unhung += truth.hung ? 0 : 1;
    looked.empty += truth.concrete ? 0 : 1;
    looked.moved += truth.moved ? 1 : 0;
    const bool green = row.run_wanted() && !view.closed;
    if (green) {
      CHECK(truth.may_run());
      ++looked.green;
      ++looked.green_on[element.kind];
      looked.bays_apart += some_bay_not_fresh(state, element, row, index, now) ? 1 : 0;
    }
    // What it says is so.
    if (row.wait == RunWait::over_set) CHECK((truth.concrete && !truth.last_fresh));
    if (row.wait == RunWait::not_hung) CHECK((!truth.hung && truth.fresh));
    if (row.wait == RunWait::empty || row.wait == RunWait::unread) CHECK_FALSE(truth.concrete);
    if (row.wait == RunWait::not_served) CHECK_FALSE(truth.served);
    if (row.wait == RunWait::enough) CHECK(row.ran >= row.low - seconds(0.001));
    if (row.wait == RunWait::cleared) CHECK(truth.moved);
    // And what is wanted is not hidden.
    const bool asked = truth.served && row.ran < row.low - seconds(0.001);
    if (truth.may_run() && truth.last_fresh && asked && !view.closed &&
        row.caution != RowCaution::head_over) {
      CHECK(row.wait == RunWait::none);
    }
    for (const RunNowView& next : view.run_now) {
      if (next.place != row.place || next.running) continue;
      CHECK((truth.concrete && truth.fresh && !truth.moved));
      if (next.wait == RunWait::none) {
        CHECK(truth.may_run());
        CHECK(green);
        ++looked.urged;
      } else if (next.wait == RunWait::not_hung) {
        CHECK_FALSE(truth.hung);
        ++looked.hang_first;
      } else {
        CHECK(next.wait == RunWait::head_over);
      }
    }
  }
}

}  // namespace

TEST_CASE(
    "no RUN is ever green over set concrete, an unhung row or an empty bay, and none is urged") {
  Looked looked;
  for (unsigned seed = kFirstSeed; seed < kFirstSeed + kPlacings; ++seed) {
    CAPTURE(seed);
    RandomPlacing placing(seed);
    PourState state = *fold(std::vector<Event>{placing.opening});
    for (int i = 0; i < kEventsOfOne; ++i) {
      CAPTURE(i);
      extend(state, placing.next());
      const Moment at = state.moment(state.last);
      const Moment later = after(at, seconds(placing.whole(1, 300)));
      // Now and then long after the last tap: it sets while nobody touches the glass.
      const Moment much_later = after(at, seconds(60 * placing.whole(20, 500)));
      for (std::size_t e = 0; e < state.elements.size(); ++e) {
        look_at_element(state, e, at, looked);
        look_at_element(state, e, later, looked);
        if (i % 6 == 0) look_at_element(state, e, much_later, looked);
      }
    }
  }
  std::string waits;
  for (const auto& [wait, times] : looked.waits) {
    waits += fmt::format(" {}:{}", static_cast<int>(wait), times);
  }
  MESSAGE("seeds ", kFirstSeed, " to ", kFirstSeed + kPlacings - 1, ": green ", looked.green,
          " (walls ", looked.green_on[ElementKind::wall], ", columns ",
          looked.green_on[ElementKind::column], ", decks ", looked.green_on[ElementKind::deck],
          "), of these with a bay not fresh ", looked.bays_apart, ", urged ", looked.urged,
          ", to be hung first ", looked.hang_first, "; over set ", looked.over_set, ", unhung ",
          looked.unhung, ", empty ", looked.empty, ", moved ", looked.moved, "; by reason", waits);
  CHECK(looked.green > 3000);
  CHECK(looked.bays_apart > 300);
  for (const ElementKind kind : {ElementKind::wall, ElementKind::column, ElementKind::deck}) {
    CHECK(looked.green_on[kind] > 300);
  }
  CHECK(looked.urged > 300);
  CHECK(looked.hang_first > 300);
  for (const RunWait wait :
       {RunWait::closed, RunWait::cleared, RunWait::head_over, RunWait::empty, RunWait::unread,
        RunWait::over_set, RunWait::not_hung, RunWait::not_served, RunWait::enough}) {
    CAPTURE(static_cast<int>(wait));
    CHECK(looked.waits[wait] > 100);
  }
}
