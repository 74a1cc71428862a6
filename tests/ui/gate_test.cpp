// What is not in order before a lift or a run asks for a name and a reason; it clears nothing.
#include <doctest/doctest.h>

#include "pour/log/log_entry.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kStart = *parse_moment("2026-03-02T05:00:00.000Z");

}  // namespace

TEST_CASE("a lift over a walk-down nobody answered asks why, keeps it by name and is never quiet") {
  Tablet tablet(small_pour(kStart), kStart + 1min);
  CHECK(tablet.says("Not in order"));
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  tablet.tap("START LIFT 1");
  CHECK(tablet.says("Lift 1: not all is in order"));
  tablet.tap("DO NOT START");
  CHECK(tablet.state->elements[0].lifts.empty());
  CHECK(tablet.state->overrides.empty());
  tablet.tap("START LIFT 1");
  tablet.tap("OTHER REASON");
  tablet.type("RAIN COMES");
  tablet.tap("KEEP");
  REQUIRE(tablet.state->overrides.size() == 2);
  for (const OverrideState& passed : tablet.state->overrides) {
    CHECK(passed.what.why == "RAIN COMES");
    CHECK(tablet.state->log[passed.ref].event.by == PersonId{"foreman"});
  }
  REQUIRE(tablet.state->elements[0].lifts.size() == 1);
  CHECK(has(tablet, "gate-passed"));
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  // Asked once: the next lift of the element begins by one tap.
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
  tablet.tap("START LIFT 2");
  CHECK(tablet.state->elements[0].lifts.size() == 2);
}

TEST_CASE("the way to put it right stands beside the reasons") {
  Tablet tablet(small_pour(kStart), kStart + 1min);
  tablet.tap("START LIFT 1");
  tablet.tap_id("ready");
  CHECK(tablet.find("OK Form") != nullptr);
  CHECK(tablet.state->elements[0].lifts.empty());
}

TEST_CASE("a row that hangs nowhere is not run before it is hung, or gone on over by name") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  tablet.tap("START LIFT 1");
  CHECK(tablet.state->elements[0].lifts.size() == 1);  // all in order
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
  tablet.tap("RUN R1");
  CHECK(tablet.says("Row not logged as hung"));
  SUBCASE("hung with one tap, it runs by the next") {
    tablet.tap("HUNG, CABLES FIXED");
    CHECK(tablet.state->runs.empty());
    tablet.tap("RUN R1");
    CHECK(tablet.state->runs.size() == 1);
    CHECK(tablet.state->overrides.empty());
    CHECK_FALSE(has(tablet, "cable-open"));
  }
  SUBCASE("gone on over, the run counts from then and the stop stands") {
    tablet.wait(seconds(300));
    const Moment agreed = tablet.now;
    tablet.tap("The superintendent agreed");
    REQUIRE(tablet.state->runs.size() == 1);
    CHECK(tablet.state->moment(tablet.state->runs[0].from) >= agreed);  // when it was run
    CHECK(tablet.state->overrides[0].what.rule == "row-unhung");
    CHECK(tablet.state->overrides[0].what.row == RowId{"R1"});
    CHECK(has(tablet, "cable-open"));
    tablet.tap("REST R1");
    tablet.tap("RUN R1");  // asked once a lift
    CHECK(tablet.state->runs.size() == 2);
  }
}

TEST_CASE("a hang without its cables asks again, whatever was gone on over before") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  tablet.tap("START LIFT 1");
  tablet.tap("R1");
  tablet.tap("HUNG, CABLES NOT SEEN");
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
  tablet.tap("RUN R1");
  CHECK(tablet.says("Safety cables not all seen fixed"));
  tablet.tap("The engineer agreed");
  tablet.tap("REST R1");
  tablet.tap("R1");
  tablet.tap("TAKEN DOWN");
  tablet.tap("R1");
  tablet.tap("HUNG, CABLES NOT SEEN");
  tablet.tap("RUN R1");
  CHECK(tablet.says("Safety cables not all seen fixed"));
}

TEST_CASE(
    "a bay is started by one tap on it in the elevation, and by its number where it is narrow") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  CHECK(tablet.find_id("bay-start 1") == nullptr);  // no lift is being placed
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(60));
  tablet.tap_id("bay-start 2");
  const auto* start = std::get_if<event::BayStart>(&tablet.events.back().what);
  REQUIRE(start != nullptr);
  CHECK(*start == event::BayStart{ElementId{"W1"}, 1, 2});
  CHECK(tablet.find_id("bay-start 2") == nullptr);
  CHECK(tablet.find_id("bay-start 1") != nullptr);
  std::vector<Event> events = ready_pour(kStart);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().bays.assign(20, metres(0.2));
  open.plan = std::make_shared<const Plan>(plan);
  Tablet narrow(events, kStart + 1min);
  narrow.tap("START LIFT 1");
  narrow.wait(seconds(60));
  narrow.tap_id("bay-start");
  CHECK(narrow.says("Which bay does concrete reach now?"));
  narrow.tap_id("bay-start 5");
  CHECK(std::get<event::BayStart>(narrow.events.back().what).bay == 5);
}
