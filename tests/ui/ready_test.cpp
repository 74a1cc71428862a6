// The walk-down by taps: every point answered, a note to what is not in order, a later answer.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kWalkDown = *parse_moment("2026-03-02T05:00:00.000Z");

int ready_events(const Tablet& tablet) {
  int count = 0;
  for (const Event& event : tablet.events) {
    if (std::holds_alternative<event::Ready>(event.what)) ++count;
  }
  return count;
}

// Turns the pages until the target is there.
void tap_on_its_page(Tablet& tablet, const std::string& id) {
  for (int turn = 0; turn < 6 && tablet.find_id(id) == nullptr; ++turn) {
    tablet.tap_id("ready page-down");
  }
  tablet.tap_id(id);
}

}  // namespace

TEST_CASE("the walk-down is offered before the first lift, a tap away, and in MORE ever after") {
  Tablet tablet(small_pour(kWalkDown), kWalkDown + 1min);
  REQUIRE(tablet.find("WALK-DOWN") != nullptr);
  CHECK(tablet.says("13 of 13 open"));
  tablet.tap("WALK-DOWN");
  CHECK(tablet.taps == 1);
  CHECK(tablet.find("OK Form") != nullptr);
  tablet.tap("BACK");
  tablet.tap("START LIFT 1");  // who goes on over it gives a name and a reason
  CHECK(tablet.state->elements[0].lifts.empty());
  CHECK(tablet.says("Walk-down not all in order"));
  CHECK(tablet.says("It is kept with the name A. Reyes"));
  tablet.tap("Looked over on the form, not logged");
  REQUIRE(tablet.state->overrides.size() == 2);  // nor was the mix measured
  CHECK(tablet.state->overrides[0].what.rule == "ready-open");
  CHECK(tablet.state->elements[0].lifts.size() == 1);
  CHECK(tablet.find("WALK-DOWN") == nullptr);
  tablet.tap("MORE");
  tablet.tap("WALK-DOWN");
  CHECK(tablet.find("OK Form") != nullptr);
}

TEST_CASE("each point is answered by one tap; what is not OK takes a note and is a finding") {
  Tablet tablet(small_pour(kWalkDown), kWalkDown + 1min);
  tablet.tap("WALK-DOWN");
  tablet.tap("OK Form");
  tablet.tap("NOT OK Ties");
  CHECK(ready_events(tablet) == 2);  // kept before any note is typed
  for (const char* key : {"key T", "key 3", "key erase", "key I", "key E"}) {
    if (std::string(key) == "key 3" || std::string(key) == "key erase") continue;
    tablet.tap_id(key);
  }
  tablet.tap("KEEP");
  CHECK(ready_events(tablet) == 3);
  CHECK(std::get<event::Ready>(tablet.events.back().what) == event::Ready{"ties", false, "TIE"});
  CHECK(tablet.says("TIE"));
  CHECK(tablet.says("2 of 13 answered, 1 not OK"));
  for (const char* item :
       {"bracing", "rebar", "motors tight", "safety cables", "cords", "inverter setting",
        "spare motors", "standby internal vibrators", "access", "ppe", "weather"}) {
    tap_on_its_page(tablet, std::string("ok ") + item);
  }
  CHECK(ready_events(tablet) == 14);
  tablet.tap("BACK");
  CHECK(tablet.says("1 of 13 open"));
  const auto found = [&] {
    return std::any_of(tablet.report.findings.begin(), tablet.report.findings.end(),
                       [](const Finding& f) { return f.rule == "ready-open"; });
  };
  CHECK_FALSE(found());
  SUBCASE("placing begins all the same: the finding stands") {
    tablet.tap("START LIFT 1");
    tablet.tap("The engineer agreed");
    CHECK(found());
  }
  SUBCASE("a later answer stands instead") {
    tablet.tap("WALK-DOWN");
    tablet.tap("OK Ties");
    tablet.tap("BACK");
    CHECK(tablet.says("all 13 OK"));
    tablet.tap("START LIFT 1");
    CHECK_FALSE(tablet.says("Walk-down not all in order"));
    tablet.tap("The engineer agreed");  // that the mix is not measured
    CHECK_FALSE(found());
  }
}

TEST_CASE("a note may be left out, and what a script calls otherwise is shown as it is written") {
  std::vector<Event> events = small_pour(kWalkDown);
  Event other = events.front();
  other.id = EventId{"t1"};
  other.at = kWalkDown + 30s;
  other.what = event::Ready{"pump line tied", false, ""};
  other.entry = Entry{other.at, other.at.time_since_epoch(), "boot"};
  events.push_back(other);
  Tablet tablet(events, kWalkDown + 1min);
  CHECK(tablet.says("14 of 14 open"));
  tablet.tap("WALK-DOWN");
  tablet.tap("NOT OK Form");
  tablet.tap("CANCEL");
  CHECK(ready_events(tablet) == 2);
  tap_on_its_page(tablet, "ok pump line tied");
  CHECK(ready_events(tablet) == 3);
  CHECK(tablet.says("2 of 14 answered, 1 not OK"));
}
