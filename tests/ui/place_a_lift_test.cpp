// The main job by taps alone, in the real screens, compared with the events it must make.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {
const Moment kDawn = *parse_moment("2026-03-02T05:00:00.000Z");

template <class Kind>
const Kind* what(const Event& event) {
  return std::get_if<Kind>(&event.what);
}
}  // namespace

TEST_CASE("a lift is placed and two rows run by taps: three for the lift, two a row") {
  Tablet tablet(hung_pour(kDawn), kDawn + 1min);
  const std::size_t before = tablet.events.size();
  tablet.tap("START LIFT 1");
  CHECK(tablet.taps == 1);
  const Moment started = tablet.events.back().at;
  tablet.wait(seconds(600));

  tablet.tap("RUN R1");
  tablet.wait(seconds(100));
  CHECK(tablet.says("enough"));
  tablet.tap("REST R1");
  tablet.tap("RUN R2");
  tablet.wait(seconds(95));
  tablet.tap("REST R2");
  CHECK(tablet.taps == 5);

  tablet.tap("END LIFT 1");
  const Moment ended = tablet.now;
  CHECK(tablet.says("0.60 m"));  // the planned top is the guess
  tablet.wait(seconds(30));
  tablet.tap("KEEP");
  CHECK(tablet.taps == 7);

  REQUIRE(tablet.events.size() == before + 6);
  const auto* start = what<event::LiftStart>(tablet.events[before]);
  REQUIRE(start);
  CHECK(*start == event::LiftStart{ElementId{"W1"}, 1});
  CHECK(started >= kDawn + 1min);
  const RowPlace r1{ElementId{"W1"}, Side::near_side, RowId{"R1"}};
  const RowPlace r2{ElementId{"W1"}, Side::near_side, RowId{"R2"}};
  REQUIRE(what<event::Run>(tablet.events[before + 1]));
  CHECK(what<event::Run>(tablet.events[before + 1])->place == r1);
  REQUIRE(what<event::Rest>(tablet.events[before + 2]));
  CHECK(what<event::Rest>(tablet.events[before + 2])->place == r1);
  REQUIRE(what<event::Run>(tablet.events[before + 3]));
  CHECK(what<event::Run>(tablet.events[before + 3])->place == r2);
  REQUIRE(what<event::Rest>(tablet.events[before + 4]));
  CHECK(what<event::Rest>(tablet.events[before + 4])->place == r2);
  const auto* end = what<event::LiftEnd>(tablet.events[before + 5]);
  REQUIRE(end);
  CHECK(end->lift == 1);
  CHECK(in_metres(end->height) == doctest::Approx(0.6));
  CHECK_FALSE(end->bay);
  // The lift ended when END was tapped, not when its height had been typed.
  CHECK(between(tablet.events[before + 5].at, ended) < seconds(1));
  CHECK(tablet.state->elements[0].lifts.size() == 1);
  CHECK(tablet.state->placing(0) == nullptr);
}

TEST_CASE("a top is typed for one bay") {
  Tablet tablet(ready_pour(kDawn), kDawn + 1min);
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(300));
  tablet.tap("TOP");
  tablet.tap_id("bay 2");
  for (const char* key : {"key 0", "key .", "key 3", "key 5"}) tablet.tap_id(key);
  CHECK(tablet.says("0.35 m"));
  tablet.tap("KEEP");
  const auto* top = what<event::Top>(tablet.events.back());
  REQUIRE(top);
  CHECK(in_metres(top->height) == doctest::Approx(0.35));
  CHECK(top->bay == 2);
}
