// The one next thing: what its card says, and that a touch of it does that and no more.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kStart = *parse_moment("2026-03-02T05:00:00.000Z");

// A small pour whose second row wants the motors of the first, which serves lift 1 alone.
std::vector<Event> leapfrog() {
  std::vector<Event> events = ready_pour(kStart);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  auto& rows = plan.elements.front().rows;
  rows[0].serves = {1};
  for (std::size_t i = 0; i < 2; ++i) rows[1].motors[i].id = rows[0].motors[i].id;
  open.plan = std::make_shared<const Plan>(plan);
  return events;
}

template <class Kind>
bool last_is(const Tablet& tablet) {
  return std::holds_alternative<Kind>(tablet.events.back().what);
}

}  // namespace

TEST_CASE("a lift's work is done by touching one card: fix, run, rest, take down, hang") {
  Tablet tablet(leapfrog(), kStart + 1min);
  tablet.tap("R1");
  tablet.tap("HUNG, CABLES NOT SEEN");
  place_lift_1(tablet, {});
  tablet.tap_id("do cables R1 near");
  tablet.tap("HUNG, CABLES FIXED");
  tablet.tap_id("do run R1 near");
  CHECK(last_is<event::Run>(tablet));
  CHECK(tablet.says("RUNNING: R1"));
  CHECK(tablet.find_id("do rest R1 near") == nullptr);  // it has not run enough
  tablet.wait(seconds(100));
  tablet.tap_id("do rest R1 near");
  CHECK(last_is<event::Rest>(tablet));
  tablet.tap_id("do take down R1 near");
  CHECK(last_is<event::TakeDown>(tablet));
  tablet.tap_id("do hang R2 near");
  REQUIRE(last_is<event::Hang>(tablet));
  CHECK(std::get<event::Hang>(tablet.events.back().what).cables);
  CHECK(tablet.says("No row waits"));
}

TEST_CASE("a second tap on the card is not taken for the step that came under the finger") {
  Tablet tablet(leapfrog(), kStart + 1min);
  place_lift_1(tablet, {"R1"});
  tablet.tap_id("do run R1 near");
  tablet.wait(seconds(100));
  const screens::Point card = tablet.find_id("do rest R1 near")->target.box.middle();
  const std::size_t before = tablet.events.size();
  tablet.tap_at(card);
  tablet.tap_at(card);  // at once, where TAKE DOWN stands by now
  CHECK(tablet.events.size() == before + 1);
  CHECK(last_is<event::Rest>(tablet));
}

TEST_CASE("what ran for the lift and was taken down says so, not how long it ran") {
  Tablet tablet(leapfrog(), kStart + 1min);
  place_lift_1(tablet);
  tablet.tap_id("row R1 near");
  tablet.wait(seconds(100));
  tablet.tap_id("row R1 near");
  CHECK(tablet.find_id("row-info R1 near")->text.find("enough") != std::string::npos);
  tablet.tap_id("row-info R1 near");
  tablet.tap("TAKEN DOWN");
  CHECK(tablet.says("TAKEN DOWN"));
  CHECK(tablet.find_id("row-info R1 near")->text.find("enough") == std::string::npos);
}

TEST_CASE("the banner stays dimmed where what was found is seen and open, and is told on panels") {
  std::vector<Event> events = ready_pour(kStart);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().form_rating = kilopascals(80);  // it bears all of it
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kStart + 1min);
  place_lift_1(tablet);
  tablet.tap("RUN R1");
  tablet.wait(seconds(30));
  tablet.tap("REST R1");  // ran too short
  tablet.tap("START LIFT 2");
  tablet.wait(seconds(1200));
  tablet.tap("END LIFT 2");
  tablet.tap("KEEP");
  REQUIRE(has(tablet, "run-short"));
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  CAPTURE(tablet.find_id("attention")->text);
  CHECK(tablet.says("MEND: "));
  tablet.wait(seconds(3600));  // no time makes it go
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  tablet.tap_id("attention");
  for (int page = 0; page < 6; ++page) {
    const auto* turn = tablet.find_id("findings page-down");
    if (turn == nullptr || !turn->target.enabled) break;
    tablet.tap_id("findings page-down");
  }
  tablet.tap("BACK");
  CHECK(tablet.says("Still open: "));
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  tablet.tap("MORE");
  CHECK(tablet.says("Still open: "));
}

TEST_CASE("a height far over the planned top is asked about once; a guess is shown as one") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  CHECK(tablet.says("~0.60 m"));
  CHECK(tablet.says("GUESS"));
  for (const char* key : {"key 1", "key .", "key 5"}) tablet.tap_id(key);
  CHECK_FALSE(tablet.says("~"));
  const std::size_t before = tablet.events.size();
  tablet.tap("KEEP");
  CHECK(tablet.events.size() == before);
  CHECK(tablet.says("KEEP twice"));
  tablet.tap("KEEP");
  REQUIRE(tablet.events.size() == before + 1);
  CHECK(in_metres(std::get<event::LiftEnd>(tablet.events.back().what).height) ==
        doctest::Approx(1.5));
}
