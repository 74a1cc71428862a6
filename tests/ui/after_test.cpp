// After the last lift, by taps: curing, the concrete's temperature, leave to strip, the gate before
// stripped faces; and what of loads, specimens and weather is told by taps as well.
#include <doctest/doctest.h>

#include <set>

#include "pour/log/event.h"
#include "pour/plan/plan_json.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kDawn = *parse_moment("2026-03-02T05:00:00.000Z");

// A truck of 6.5 m3.
void enter_truck(Tablet& tablet, const std::string& ticket) {
  tablet.tap("NEW TRUCK");
  tablet.tap_id("ticket");
  keys(tablet, ticket);
  tablet.tap("KEEP");
  tablet.tap_id("volume");
  keys(tablet, "6.5");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
}

// The ready pour, its element with more fields.
std::vector<Event> asking(Moment at, const std::string& fields) {
  std::vector<Event> events = ready_pour(at);
  auto& open = std::get<event::PourOpen>(events.front().what);
  std::string text = to_json(*open.plan);
  const std::string id = R"("id":"W1")";
  const auto where = text.find(id);
  REQUIRE(where != std::string::npos);
  text.insert(where + id.size(), "," + fields);
  const auto plan = parse_plan(text, "the test's plan");
  REQUIRE_MESSAGE(plan, (plan ? "" : to_text(plan.error())));
  open.plan = std::make_shared<const Plan>(*plan);
  return events;
}

void open_after(Tablet& tablet) {
  tablet.tap("NOTE");
  tablet.tap("CURE, STRIP");
}

}  // namespace

TEST_CASE("curing, temperature and leave to strip are taps") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  open_after(tablet);
  CHECK_FALSE(tablet.find_id("strip near")->target.enabled);  // nothing stands there yet
  tablet.tap("BACK");
  place_lift_1(tablet);
  open_after(tablet);
  tablet.tap_id("cure start");
  REQUIRE(kept<event::CureStart>(tablet).size() == 1);
  tablet.wait(seconds(600));
  open_after(tablet);
  CHECK(tablet.says("since 05:3"));
  tablet.tap_id("hardening");
  keys(tablet, "24");
  tablet.tap("KEEP");
  REQUIRE(kept<event::ConcreteTemp>(tablet).size() == 1);
  CHECK(kept<event::ConcreteTemp>(tablet).front().temp.degrees == doctest::Approx(24));
  open_after(tablet);
  tablet.tap_id("cure end");
  CHECK(kept<event::CureEnd>(tablet).size() == 1);
  open_after(tablet);
  tablet.tap_id("permit strip");
  tablet.type("COLD NIGHT");
  tablet.tap("KEEP");
  REQUIRE(kept<event::PermitStrip>(tablet).size() == 1);
  CHECK(kept<event::PermitStrip>(tablet).front().why == "COLD NIGHT");
}

TEST_CASE("a face that may be stripped takes two taps") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  place_lift_1(tablet);
  tablet.wait(hours(90));
  open_after(tablet);
  tablet.tap_id("strip near");
  CHECK(kept<event::Strip>(tablet).empty());
  CHECK(tablet.says("STRIPPED?"));
  tablet.wait(seconds(2));
  tablet.tap_id("strip near");
  REQUIRE(kept<event::Strip>(tablet).size() == 1);
  CHECK(kept<event::Strip>(tablet).front().side == Side::near_side);
  CHECK_FALSE(has(tablet, "strip-early"));
}

TEST_CASE("a face not to be stripped yet says why in figures and asks for a name and a reason") {
  Tablet tablet(asking(kDawn, R"("strip_after_s":57600)"), kDawn + 15min);
  place_lift_1(tablet);
  tablet.wait(hours(2));
  open_after(tablet);
  tablet.tap_id("strip near");
  CHECK(tablet.says("Stripping near: not all is in order"));
  CHECK(tablet.says("Too early to strip"));
  CHECK(
      tablet.says("2\u00A0h 0\u00A0min after its last concrete came; the plan allows it after "
                  "16\u00A0h 0\u00A0min."));
  tablet.tap("DO NOT STRIP");
  CHECK(kept<event::Strip>(tablet).empty());
  CHECK(kept<event::Override>(tablet).empty());
  open_after(tablet);
  tablet.tap_id("strip near");
  tablet.tap("The engineer agreed");
  REQUIRE(kept<event::Strip>(tablet).size() == 1);
  REQUIRE(kept<event::Override>(tablet).size() == 1);
  const event::Override over = kept<event::Override>(tablet).front();
  CHECK(over.rule == "strip-early");
  CHECK(over.side == Side::near_side);
  CHECK(over.chosen == event::Chosen::engineer_agreed);
  // One thing: the rule by the same verdict, the note under it.
  REQUIRE(has(tablet, "strip-early"));
  REQUIRE(has(tablet, "gate-passed"));
  std::set<std::string> groups;
  for (const Finding& f : tablet.report.findings) {
    if (f.rule == "strip-early" || f.rule == "gate-passed") groups.insert(f.group);
  }
  CHECK(groups.size() == 1);
}

TEST_CASE("a strength that is not shown, and leave that is asked for, stand before STRIPPED") {
  Tablet tablet(asking(kDawn, R"("strip_strength_mpa":10,"strength_curve":[[10,4],[20,10]],)"
                              R"("strip_permit":true)"),
                kDawn + 15min);
  place_lift_1(tablet);
  open_after(tablet);
  tablet.tap_id("hardening");
  keys(tablet, "20");
  tablet.tap("KEEP");
  tablet.wait(hours(15));
  open_after(tablet);
  tablet.tap_id("hardening");
  keys(tablet, "20");
  tablet.tap("KEEP");
  open_after(tablet);
  tablet.tap_id("strip far");
  // 15 h of 20 degC by the curve: 7 MPa.
  CHECK(tablet.says("7.0\u00A0MPa shown of its last concrete; the plan wants 10.0\u00A0MPa."));
  CHECK(tablet.says("The plan asks for leave to strip; none is logged."));
  tablet.tap_id("permit strip");
  tablet.type("PROPS STAND");
  tablet.tap("KEEP");
  REQUIRE(kept<event::PermitStrip>(tablet).size() == 1);
  CHECK(kept<event::PermitStrip>(tablet).front().side == Side::far_side);
  tablet.wait(hours(5));
  open_after(tablet);
  tablet.tap_id("hardening");
  keys(tablet, "21");
  tablet.tap("KEEP");
  open_after(tablet);
  tablet.tap_id("strip far");
  CHECK(tablet.says("STRIPPED?"));  // strong enough, with leave
  tablet.tap("BACK");
  open_after(tablet);
  tablet.tap_id("strip near");  // leave was given for the other face
  CHECK(tablet.says("No leave to strip"));
  CHECK_FALSE(tablet.says("Too early to strip"));
  tablet.tap("OTHER REASON");
  tablet.type("HE SAID SO");
  tablet.tap("KEEP");
  REQUIRE(kept<event::Strip>(tablet).size() == 1);
  CHECK(kept<event::Override>(tablet).back().rule == "strip-leave");
  CHECK(has(tablet, "strip-leave"));
  CHECK_FALSE(has(tablet, "strip-early"));
}

TEST_CASE("a closed pour asks before a face is stripped as well") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  place_lift_1(tablet);
  tablet.tap("MORE");
  tablet.tap_id("close pour");
  tablet.tap_id("close now");
  tablet.wait(seconds(1800));
  tablet.tap("MORE");
  tablet.tap("CURE, STRIP");
  tablet.tap_id("strip near");
  CHECK(tablet.says("it has set for certain after"));
  tablet.tap("The superintendent agreed");
  CHECK(kept<event::Strip>(tablet).size() == 1);
  CHECK(has(tablet, "strip-early"));
}

TEST_CASE("specimens are taken with a load's test, and their results come by taps later") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  enter_truck(tablet, "7001");
  tablet.tap_id("test 7001");
  tablet.tap_id("temp");
  keys(tablet, "19");
  tablet.tap("KEEP");
  tablet.tap_id("specimens");
  CHECK(tablet.says("7001-1 7001-2 7001-3"));  // guessed, to be typed over
  tablet.type(" X9");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  const event::Test test = kept<event::Test>(tablet).back();
  CHECK(test.specimens == std::vector<SpecimenId>{SpecimenId{"7001-1"}, SpecimenId{"7001-2"},
                                                  SpecimenId{"7001-3"}, SpecimenId{"X9"}});
  CHECK(test.temp == celsius(19));
  // More of the same load go on where those ended.
  tablet.tap_id("test 7001");
  tablet.tap_id("specimens");
  CHECK(tablet.says("7001-4 7001-5 7001-6"));
  tablet.tap_id("back");
  tablet.tap_id("back");
  tablet.tap_id("back");
  tablet.wait(hours(7 * 24));
  open_after(tablet);
  tablet.tap_id("specimens");
  tablet.tap_id("specimen 7001-2");
  CHECK(tablet.says("7.0"));  // days since it was taken
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
  tablet.tap_id("specimen strength");
  keys(tablet, "31.5");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  REQUIRE(kept<event::Specimen>(tablet).size() == 1);
  const event::Specimen broken = kept<event::Specimen>(tablet).front();
  CHECK(broken.specimen == SpecimenId{"7001-2"});
  CHECK(broken.age_days == doctest::Approx(7));
  CHECK(in_megapascals(broken.strength) == doctest::Approx(31.5));
  CHECK(tablet.state->specimens.front().ticket == TicketId{"7001"});
  CHECK(tablet.says("7 d: 31.5 MPa"));
}

TEST_CASE("humidity and wind are read with the air's temperature") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  tablet.tap_id("air temp");
  keys(tablet, "18");
  tablet.tap("KEEP");
  tablet.tap_id("weather humidity");
  keys(tablet, "45");
  tablet.tap("KEEP");
  tablet.tap_id("weather wind");
  keys(tablet, "3.5");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  REQUIRE(kept<event::AirTemp>(tablet).size() == 1);
  const event::AirTemp air = kept<event::AirTemp>(tablet).front();
  CHECK(air.temp == celsius(18));
  CHECK(*air.humidity == doctest::Approx(45));
  CHECK(in_metres_per_second(*air.wind) == doctest::Approx(3.5));
  REQUIRE(tablet.state->weather.size() == 1);
  // Cancelled before a temperature stands, nothing is kept.
  tablet.tap_id("air temp");
  tablet.tap_id("back");
  CHECK(kept<event::AirTemp>(tablet).size() == 1);
  CHECK(tablet.find_id("new truck") != nullptr);
}

TEST_CASE("a part's volume and what went back of a load are told by taps") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  enter_truck(tablet, "7001");
  tablet.tap_id("discharge 7001");
  tablet.wait(seconds(300));
  tablet.tap_id("end discharge 7001");
  tablet.tap_id("load 7001");
  CHECK(tablet.says("volume not told"));
  tablet.tap_id("part 1");
  keys(tablet, "4.2");
  tablet.tap("KEEP");
  REQUIRE(tablet.state->trucks.size() == 1);
  const TruckState& truck = tablet.state->trucks.front();
  CHECK(in_cubic_metres(*truck.parts.front().volume) == doctest::Approx(4.2));
  tablet.tap_id("returned");
  keys(tablet, "2");
  tablet.tap("KEEP");
  CHECK(in_cubic_metres(*tablet.state->trucks.front().what->returned) == doctest::Approx(2));
  CHECK(in_cubic_metres(tablet.state->trucks.front().placed()) == doctest::Approx(4.2));
  REQUIRE(kept<event::Fix>(tablet).size() == 2);
  CHECK(kept<event::Fix>(tablet).back().chosen == event::Chosen::told_later);
  // The same figure again tells nothing new.
  tablet.tap_id("returned");
  tablet.tap("KEEP");
  CHECK(kept<event::Fix>(tablet).size() == 2);
  tablet.tap_id("back");
  CHECK(tablet.find_id("new truck") != nullptr);
}
