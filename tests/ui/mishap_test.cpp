// What goes wrong on a pour: a pour closed too soon, a top not read, a clock that stepped, a tap on
// the wrong element, trouble with the book.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kOpened = *parse_moment("2026-03-02T05:00:00.000Z");

// The small pour's wall twice, the second with a row of its own; no rating.
std::vector<Event> two_walls() {
  std::vector<Event> events = ready_pour(kOpened);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.push_back(plan.elements.front());
  Element& second = plan.elements.back();
  second.id = ElementId{"W2"};
  second.rows.front().id = RowId{"S1"};
  open.plan = std::make_shared<const Plan>(plan);
  return hung(events);
}

// The last tap, too old to be taken back, is put right.
void correct_last(Tablet& tablet, const std::string& what) {
  tablet.wait(seconds(20));
  tablet.tap_id("tap " + tablet.events.back().id.text);
  tablet.tap_id("correct " + what);
}

void show_element(Tablet& tablet, const std::string& id) {
  tablet.tap_id("element");
  tablet.tap_id("element " + id);
}

}  // namespace

TEST_CASE("a pour closed too soon is opened again: at once by one tap, later with a reason") {
  Tablet tablet(ready_pour(kOpened), kOpened + 1min);
  tablet.tap("START LIFT 1");
  tablet.tap("MORE");
  tablet.tap_id("close pour");
  CHECK(tablet.says("Still open:"));
  CHECK(tablet.says("W1: Placing lift 1 of 3"));
  tablet.tap_id("close now");
  REQUIRE(tablet.state->closed);
  SUBCASE("at once") {
    tablet.tap("TAKE BACK");
  }
  SUBCASE("later") {
    tablet.wait(seconds(60));
    tablet.tap("MORE");
    tablet.tap("ALL TAPS");
    tablet.tap_id("tap " + tablet.events.back().id.text);
    tablet.tap_id("correct strike");
    tablet.tap_id("why 0");
  }
  CHECK_FALSE(tablet.state->closed);
  CHECK(tablet.state->placing(0) != nullptr);
}

TEST_CASE("the head before a run is reckoned on from the last reading, and says so") {
  // Lift 1 came up 0.6 m in 15 min. R2 begins at 0.7 m: 10 min into lift 2 the concrete is at about
  // 1.0 m, though nothing was read.
  Tablet tablet(ready_pour(kOpened), kOpened + 1min);
  place_lift_1(tablet);
  CHECK(tablet.says("14 of 30 kPa"));  // 0.6 m of 24 kN/m3 on R1, as read
  CHECK_FALSE(tablet.says("~"));
  tablet.tap("START LIFT 2");
  tablet.wait(seconds(600));
  CHECK(tablet.says("head ~24 of 30 kPa"));  // R1: 1.0 m
  CHECK(tablet.says("head ~22 of 30 kPa"));  // R2: down to 0.1 m, twice its reach
  tablet.wait(seconds(3000));
  CHECK(tablet.says("head ~29 of 30 kPa"));  // no higher than the lift is planned
}

TEST_CASE("a head reckoned over the rating is asked about before the row runs; the run is now") {
  std::vector<Event> events = ready_pour(kOpened);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().form_rating = kilopascals(20);
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kOpened + 1min);
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
  tablet.tap("START LIFT 2");
  tablet.wait(seconds(600));
  tablet.tap_id("row R1 near");
  CHECK(tablet.find_id("gate 1") != nullptr);
  CHECK(tablet.state->runs.empty());
  tablet.wait(seconds(600));  // the form designer is asked
  tablet.tap_id("gate 1");
  REQUIRE(tablet.state->runs.size() == 1);
  CHECK(in_seconds(between(tablet.events.back().at, tablet.now)) < 2);
}

TEST_CASE("a row that runs on the element not shown is told, and taps name their element") {
  Tablet tablet(two_walls(), kOpened + 1min);
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(60));
  tablet.tap_id("row R1 near");
  show_element(tablet, "W2");
  CHECK(tablet.says("elsewhere RUNNING: 1"));
  CHECK(tablet.says("W1: Run row R1"));
  show_element(tablet, "W1");
  CHECK_FALSE(tablet.says("elsewhere"));
}

TEST_CASE("the row of a tap is put right among the rows of its own element") {
  Tablet tablet(two_walls(), kOpened + 1min);
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(60));
  tablet.tap_id("row R1 near");
  const EventId run = tablet.events.back().id;
  show_element(tablet, "W2");
  tablet.wait(seconds(20));
  tablet.tap_id("tap " + run.text);
  tablet.tap_id("correct row");
  CHECK(tablet.find_id("choose row S1 near") == nullptr);
  tablet.tap_id("choose row R2 near");
  tablet.tap("NEXT");
  tablet.tap_id("why 1");
  REQUIRE(tablet.state->runs.size() == 1);
  CHECK(tablet.state->runs.front().element == 0);
  CHECK(tablet.state->row_of(tablet.state->runs.front()).id == RowId{"R2"});
}

TEST_CASE("a top corrected above the form is refused, and what was read stands") {
  Tablet tablet(ready_pour(kOpened), kOpened + 1min);
  tablet.refusing = true;
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
  correct_last(tablet, "height");
  tablet.tap_id("key 6");
  tablet.tap("NEXT");
  tablet.tap_id("why 2");
  CHECK(tablet.refused == 1);
  CHECK(in_metres(tablet.state->elements[0].tops[0].standing()) == doctest::Approx(0.6));
  CHECK(tablet.state->placing(0) == nullptr);
  // The trouble stands over the head of the screen until it is put away.
  CHECK(tablet.find_id("trouble") != nullptr);
  tablet.tap_id("trouble");
  CHECK(tablet.find_id("trouble") == nullptr);
  tablet.tap("MORE");
  CHECK(tablet.find_id("close pour") != nullptr);
}

TEST_CASE("a discharge entered by taps is put right with its end") {
  Tablet tablet(ready_pour(kOpened), kOpened + 15min);
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  tablet.tap("NEW TRUCK");
  tablet.tap_id("ticket");
  tablet.tap_id("key 7");
  tablet.tap("KEEP");
  tablet.tap_id("volume");
  tablet.tap_id("key 6");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  tablet.tap("DISCHARGE 7");
  tablet.wait(seconds(1200));
  tablet.tap("END DISCHARGE 7");
  const Seconds ended = *tablet.state->trucks.front().ended();
  tablet.tap("BACK");
  correct_last(tablet, "time");
  tablet.tap_id("shift -60");
  tablet.tap("NEXT");
  tablet.tap_id("why 3");
  CHECK(in_seconds(*tablet.state->trucks.front().ended() - ended) == doctest::Approx(-60));
}

TEST_CASE("a plan in the making goes for another by a second tap only") {
  Tablet tablet(ready_pour(kOpened), kOpened + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  tablet.tap_id("plan site");
  tablet.tap_id("key Q");
  tablet.tap("KEEP");
  tablet.escape();
  tablet.frame();
  tablet.tap("NEW POUR");
  tablet.tap_id("plan copy P1");
  CHECK(tablet.ui.drafts().plan->draft.plan.site == "Q");
  CHECK(tablet.says("instead of the plan begun?"));
  tablet.tap_id("plan copy P1");
  CHECK(tablet.ui.drafts().plan->draft.plan.site == "Yard");
}
