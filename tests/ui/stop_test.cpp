// What stops a pour, by taps: something moved, a joint past its set; and what nobody judged.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "pour/outlook/next_steps.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kStart = *parse_moment("2026-03-02T05:00:00.000Z");

}  // namespace

TEST_CASE("\"form moved\" is no note: it is a stop and a hold at once, and only RESUME ends it") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  tablet.tap("START LIFT 1");
  tablet.tap("NOTE");
  tablet.tap("Form moved");
  REQUIRE(std::holds_alternative<event::Moved>(tablet.events.back().what));
  CHECK(has(tablet, "form-moved"));
  CHECK(tablet.says("STOP: Form moved or motor loose"));
  CHECK(tablet.says("ON HOLD"));
  tablet.restart(tablet.events, tablet.now + 10min);
  CHECK(tablet.says("STOP: Form moved or motor loose"));  // still true, so still told
  tablet.tap("RUN R1");                                   // no reason leads over it
  CHECK(tablet.says("Keep away"));
  CHECK(tablet.find_id("gate 0") == nullptr);
  tablet.tap("BACK");
  CHECK(tablet.state->runs.empty());
  tablet.tap("RESUME");
  CHECK(std::holds_alternative<event::Moved>(tablet.events.back().what));  // asked first
  CHECK(tablet.says("It is kept with the name A. Reyes"));
  tablet.tap("TOLD CLEAR: RESUME");
  CHECK(std::holds_alternative<event::Resume>(tablet.events.back().what));
  CHECK(has(tablet, "form-moved"));  // the record keeps it
}

TEST_CASE("a joint that set is a stop until the decision on it is typed where it is told") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  place_lift_1(tablet);
  tablet.restart(tablet.events, tablet.now + 8h);
  REQUIRE(has(tablet, "knit-late"));
  CHECK(rows_to_run(*tablet.state, 0, tablet.state->clock(tablet.now)).empty());
  tablet.tap_id("attention");
  std::size_t number = 0;
  const auto causes = by_cause(tablet.report.findings);
  while (number + 1 < causes.size() && causes[number].front().rule != "knit-late") ++number;
  const std::string decide = "joint decided " + std::to_string(number);
  while (tablet.find_id(decide) == nullptr) tablet.tap_id("findings page-down");
  tablet.tap_id(decide);
  tablet.type("OK");
  tablet.tap("KEEP");
  const auto* joint = std::get_if<event::Joint>(&tablet.events.back().what);
  REQUIRE(joint != nullptr);
  CHECK(joint->decision == "OK");
  CHECK(joint->lift == 1);
}

TEST_CASE("over concrete that may have set RUN says so, and asks who goes on over it") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  place_lift_1(tablet);
  CHECK(tablet.find_id("row R1 near")->text == "RUN R1");
  tablet.restart(tablet.events, tablet.now + 8h);
  tablet.frame();
  CHECK(tablet.find_id("row R1 near")->text == "RUN R1 may have set");
  CHECK(tablet.find_id("do run R1 near") == nullptr);
  tablet.tap_id("next");
  CHECK(tablet.says("No row is to be run now."));
  CHECK_FALSE(tablet.says("has run enough"));
  tablet.tap_id("row R1 near");
  CHECK(tablet.says("Concrete may have set"));
  CHECK(tablet.state->runs.empty());
  tablet.tap("The engineer agreed");
  CHECK(std::holds_alternative<event::Run>(tablet.events.back().what));
  CHECK(tablet.state->overrides.back().what.rule == "run-over-set");
}

TEST_CASE("a row that hangs nowhere is told to be hung first, and the way there is one tap") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  place_lift_1(tablet);
  tablet.tap_id("row-info R1 near");
  tablet.tap("TAKEN DOWN");
  CHECK(tablet.find_id("row R1 near")->text == "RUN R1 not hung");
  CHECK(tablet.find_id("do run R1 near") == nullptr);
  CHECK(tablet.find_id("do hang R1 near") != nullptr);
  tablet.tap_id("next");
  CHECK(tablet.says("HANG FIRST: R1"));
  CHECK(tablet.find_id("next row R1 near") == nullptr);
  tablet.tap_id("up R1 near");
  CHECK(std::holds_alternative<event::Hang>(tablet.events.back().what));
  CHECK(tablet.says("RUN R1"));
  tablet.tap("BACK");
  CHECK(tablet.find_id("do run R1 near") != nullptr);
}

TEST_CASE("nothing found is not called quiet where something is not judged") {
  std::vector<Event> events = ready_pour(kStart);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().form_rating = kilopascals(60);  // 30 would be too weak at any rate
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kStart + 1min);
  CHECK(tablet.says("Nothing needs a hand now"));
  tablet.tap("START LIFT 1");  // with no load logged
  CHECK_FALSE(tablet.says("Nothing needs a hand now"));
  CHECK(tablet.says("Not judged: 1"));
  tablet.tap_id("attention");
  CHECK(tablet.says("NOT JUDGED"));
  CHECK(tablet.says("discharge"));
}
