// A whole pour of six lifts logged by taps alone, against the same pour written as a script: the
// two books must add up to the same state.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/log/log_entry.h"
#include "pour/plan/plan_json.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

// Six lifts of 0.5 m in two bays, four rows; each row is reached by two or three lifts.
const char* const kPlan =
    R"({"site":"Yard","name":"Trial wall, six lifts","units":"si",)"
    R"("people":[{"id":"foreman","name":"A. Reyes","role":"foreman"}],)"
    R"("mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","kind":"wall","length":4,"height":3,"thickness":0.25,)"
    R"("form_rating_kpa":60,"rise_limit":4,"bays":[2,2],"lifts":[0.5,1,1.5,2,2.5,3],"rows":[)"
    R"({"id":"R1","z":0.4,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.6},)"
    R"({"id":"M2","x":3,"reach_x":1,"reach_z":0.6}]},)"
    R"({"id":"R2","z":1.2,"serves":[2,3,4],"motors":[{"id":"M3","x":1,"reach_x":1,"reach_z":0.6},)"
    R"({"id":"M4","x":3,"reach_x":1,"reach_z":0.6}]},)"
    R"({"id":"R3","z":2.0,"serves":[4,5],"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.6},)"
    R"({"id":"M2","x":3,"reach_x":1,"reach_z":0.6}]},)"
    R"({"id":"R4","z":2.6,"serves":[5,6],"motors":[{"id":"M3","x":1,"reach_x":1,"reach_z":0.6},)"
    R"({"id":"M4","x":3,"reach_x":1,"reach_z":0.6}]}]}]})";

// What is tapped when, each by what is written on it ("#" before a target's id, "+" before keys).
struct Step {
  const char* at;
  std::vector<const char*> taps;
};
const std::vector<Step> kTapsOfLift{
    {"05:02:00", {"R1", "HUNG, CABLES FIXED"}},
    {"05:04:00", {"R2", "HUNG, CABLES NOT SEEN"}},
    {"05:06:00", {"R2", "HUNG, CABLES FIXED"}},
    {"05:10:00", {"START LIFT 1", "The engineer agreed"}},
    {"05:20:00", {"TOP", "+0.25", "KEEP"}},
    {"05:30:00", {"END LIFT 1", "KEEP"}},
    {"05:31:00", {"RUN R1"}},
    {"05:32:40", {"REST R1"}},
    {"05:36:00", {"START LIFT 2"}},
    {"05:36:20", {"#bay-start 1"}},
    {"05:37:10", {"#bay-start 2"}},
    {"05:46:00", {"TOP", "#bay 2", "+0.8", "KEEP"}},
    {"05:55:00", {"END LIFT 2", "KEEP"}},
    {"05:56:00", {"RUN R1"}},
    {"05:56:10", {"RUN R2"}},
    {"05:57:40", {"REST R1"}},
    {"05:57:50", {"REST R2"}},
    {"06:01:00", {"R1", "TAKEN DOWN"}},
    {"06:02:00", {"START LIFT 3"}},
    {"06:10:00", {"HOLD", "Waiting for trucks"}},
    {"06:18:00", {"RESUME"}},
    {"06:25:00", {"END LIFT 3", "KEEP"}},
    {"06:26:00", {"RUN R3", "The engineer agreed"}},  // the wrong row ...
    {"06:26:04", {"#take-back t26"}},                 // ... taken back at once
    {"06:26:10", {"RUN R2"}},
    {"06:27:55", {"REST R2"}},
    {"06:28:30", {"R3", "HUNG, CABLES FIXED"}},
    {"06:30:00", {"START LIFT 4"}},
    {"06:35:00", {"NOTE", "Grout leaks at a joint"}},
    {"06:55:00", {"END LIFT 4", "+2.1", "KEEP"}},
    {"06:56:00", {"RUN R2"}},
    {"06:56:12", {"RUN R3"}},
    {"06:57:41", {"REST R2"}},
    {"06:58:00", {"REST R3"}},
    // The top of lift 4 was misread: 2.0, not 2.1.
    {"06:59:00",
     {"MORE", "ALL TAPS", "#tap end 4", "CHANGE THE HEIGHT", "+2.0", "NEXT", "Misread the height"}},
    {"07:00:00", {"R4", "HUNG, CABLES FIXED"}},
    {"07:01:00", {"START LIFT 5"}},
    {"07:22:00", {"END LIFT 5", "KEEP"}},
    {"07:23:00", {"RUN R3"}},
    {"07:23:08", {"RUN R4"}},
    {"07:24:45", {"REST R3"}},
    {"07:24:52", {"REST R4"}},
    // The rest of row 3 was tapped 20 s late.
    {"07:25:30",
     {"MORE", "ALL TAPS", "#tap rest R3", "CHANGE THE TIME", "10 s EARLIER", "10 s EARLIER", "NEXT",
      "Tapped too late"}},
    {"07:30:00", {"START LIFT 6"}},
    {"07:52:00", {"END LIFT 6", "KEEP"}},
    {"07:53:00", {"RUN R4"}},
    {"07:54:40", {"REST R4"}},
    {"08:30:00", {"MORE", "CLOSE THE POUR", "CLOSE, THIS OPEN"}},
};

// The same pour as a script; what takes a second tap in a panel happened 0.58 s after the first.
// Ids are those of the tablet: t0, t1 ... in order of entry.
const char* const kScript = R"(
05:02:00.580 hang "row":"R1","motors":[],"cables":true
05:04:00.580 hang "row":"R2","motors":[],"cables":false
05:06:00.580 hang "row":"R2","motors":[],"cables":true
05:10:00.580 override "rule":"ready-open","why":"The engineer agreed","chosen":"engineer-agreed"
05:10:00.580 override "rule":"load-untested","why":"The engineer agreed","chosen":"engineer-agreed"
05:10:00.580 lift-start "lift":1
05:20:00.000 top "height":0.25
05:30:00.000 lift-end "lift":1,"height":0.5
05:31:00.000 run "row":"R1"
05:32:40.000 rest "row":"R1"
05:36:00.000 lift-start "lift":2
05:36:20.000 bay-start "lift":2,"bay":1
05:37:10.000 bay-start "lift":2,"bay":2
05:46:00.000 top "height":0.8,"bay":2
05:55:00.000 lift-end "lift":2,"height":1
05:56:00.000 run "row":"R1"
05:56:10.000 run "row":"R2"
05:57:40.000 rest "row":"R1"
05:57:50.000 rest "row":"R2"
06:01:00.580 take-down "row":"R1"
06:02:00.000 lift-start "lift":3
06:10:00.000 hold "reason":"Waiting for trucks","chosen":"no-trucks"
06:18:00.000 resume
06:25:00.000 lift-end "lift":3,"height":1.5
06:26:00.580 override "rule":"row-unhung","side":"near","row":"R3","lift":3,"why":"The engineer agreed","chosen":"engineer-agreed"
06:26:00.580 run "row":"R3"
06:26:04.000 strike "target":"t26","why":"taken back at once","chosen":"taken-back"
06:26:10.000 run "row":"R2"
06:27:55.000 rest "row":"R2"
06:28:30.580 hang "row":"R3","motors":[],"cables":true
06:30:00.000 lift-start "lift":4
06:35:00.000 note "text":"Grout leaks at a joint","chosen":"grout-leaks"
06:55:00.000 lift-end "lift":4,"height":2.1
06:56:00.000 run "row":"R2"
06:56:12.000 run "row":"R3"
06:57:41.000 rest "row":"R2"
06:58:00.000 rest "row":"R3"
06:59:00.000 fix "target":"t33","set":{"height":2},"why":"Misread the height","chosen":"misread-height"
07:00:00.580 hang "row":"R4","motors":[],"cables":true
07:01:00.000 lift-start "lift":5
07:22:00.000 lift-end "lift":5,"height":2.5
07:23:00.000 run "row":"R3"
07:23:08.000 run "row":"R4"
07:24:45.000 rest "row":"R3"
07:24:52.000 rest "row":"R4"
07:25:30.000 fix "target":"t44","set":{"at":"2026-03-02T07:24:25.000Z"},"why":"Tapped too late","chosen":"tapped-late"
07:30:00.000 lift-start "lift":6
07:52:00.000 lift-end "lift":6,"height":3
07:53:00.000 run "row":"R4"
07:54:40.000 rest "row":"R4"
08:30:01.160 pour-close
)";

Moment moment_of(const std::string& clock) {
  return *parse_moment("2026-03-02T" + clock + (clock.size() == 8 ? ".000Z" : "Z"));
}

Event opening() {
  auto plan = parse_plan(kPlan, "the test's plan");
  REQUIRE_MESSAGE(plan, (plan ? "" : to_text(plan.error())));
  Event open;
  open.id = EventId{"t0"};
  open.at = moment_of("05:00:00");
  open.by = PersonId{"foreman"};
  open.what = event::PourOpen{PourId{"P1"}, std::make_shared<const Plan>(*plan)};
  return open;
}

std::vector<Event> by_script() {
  std::vector<Event> events{opening()};
  std::istringstream lines(kScript);
  for (std::string line; std::getline(lines, line);) {
    if (line.empty()) continue;
    std::istringstream words(line);
    std::string clock, kind, fields;
    words >> clock >> kind;
    std::getline(words, fields);
    const bool of_element = kind != "hold" && kind != "resume" && kind != "note" &&
                            kind != "strike" && kind != "fix" && kind != "pour-close";
    if (of_element) fields = "\"element\":\"W1\"," + fields;
    const std::string json =
        fmt::format(R"({{"id":"t{}","at":"2026-03-02T{}Z","by":"foreman","do":"{}"{}{}}})",
                    events.size(), clock, kind, fields.empty() ? "" : ",", fields);
    auto event = parse_event(json, line);
    REQUIRE_MESSAGE(event, (event ? "" : to_text(event.error())));
    events.push_back(*event);
  }
  return events;
}

// The latest line of the log that this names: "end 4", "rest R3".
std::string tap_of(const Tablet& tablet, const std::string& name) {
  std::string found;
  for (const Event& event : tablet.events) {
    const auto* end = std::get_if<event::LiftEnd>(&event.what);
    const auto* rest = std::get_if<event::Rest>(&event.what);
    if (end != nullptr && name == fmt::format("end {}", end->lift)) found = event.id.text;
    if (rest != nullptr && name == "rest " + rest->place.row.text) found = event.id.text;
  }
  REQUIRE(!found.empty());
  return "tap " + found;
}

void tap(Tablet& tablet, const std::string& what) {
  if (what[0] == '+') {
    for (const char key : what.substr(1)) tablet.tap_id(std::string("key ") + key);
  } else if (what.rfind("#tap ", 0) == 0) {
    const std::string id = tap_of(tablet, what.substr(5));
    while (tablet.find_id(id) == nullptr) tablet.tap_id("taps page-down");
    tablet.tap_id(id);
  } else if (what[0] == '#') {
    tablet.tap_id(what.substr(1));
  } else {
    tablet.tap(what);
  }
}

// The tap's moment is when the finger touches the glass.
void follow(Tablet& tablet, const Step& step) {
  CAPTURE(std::string(step.at));
  const Moment at = moment_of(step.at);
  REQUIRE(tablet.now < at);
  tablet.wait(between(tablet.now, at));
  for (const char* what : step.taps) tap(tablet, what);
}

// An event without its entry and its id: what happened, when, told by whom.
bool same(const Event& a, const Event& b) {
  return a.at == b.at && a.by == b.by && a.what == b.what && a.extra == b.extra;
}

bool same_line(const std::string& a, const std::string& b) {
  if (a.empty() || b.empty()) return a == b;
  const auto one = parse_event(a, "the one");
  const auto other = parse_event(b, "the other");
  return one && other && same(*one, *other);
}

}  // namespace

TEST_CASE("six lifts by taps alone add up to the same state as the same pour by script") {
  Event open = opening();
  open.entry = Entry{open.at, open.at.time_since_epoch(), "boot"};
  Tablet tablet({open}, moment_of("05:01:00"));
  for (const Step& step : kTapsOfLift) follow(tablet, step);
  const std::vector<Event> script = by_script();

  REQUIRE(tablet.events.size() == script.size());
  for (std::size_t i = 0; i < script.size(); ++i) {
    // A correction is dated by its tap, some seconds into the panel that made it.
    const bool correction = std::holds_alternative<event::Fix>(script[i].what);
    Event tapped = tablet.events[i];
    if (correction) {
      CHECK(between(script[i].at, tapped.at) < Seconds{20});
      tapped.at = script[i].at;
    }
    CHECK_MESSAGE(same(tapped, script[i]), to_line(tapped), "\n", to_line(script[i]));
  }

  const auto folded = fold(script);
  REQUIRE_MESSAGE(folded, (folded ? "" : to_text(folded.error())));
  const PourState& b = *folded;
  const PourState& a = *tablet.state;
  CHECK(a.last == b.last);
  CHECK(a.pour == b.pour);
  CHECK(*a.plan == *b.plan);
  CHECK(a.zero == b.zero);
  REQUIRE(a.closed);
  REQUIRE(b.closed);
  CHECK(*a.closed == *b.closed);
  CHECK(a.order == b.order);
  CHECK(a.elements == b.elements);
  CHECK(a.readings == b.readings);
  CHECK(a.hangs == b.hangs);
  CHECK(a.runs == b.runs);
  CHECK(a.inserts == b.inserts);
  CHECK(a.trucks == b.trucks);
  CHECK(a.tests == b.tests);
  CHECK(a.air == b.air);
  CHECK(a.holds == b.holds);
  CHECK(a.ready == b.ready);
  CHECK(a.notes == b.notes);
  CHECK(a.signs == b.signs);
  CHECK(a.strips == b.strips);
  CHECK(a.blemishes == b.blemishes);
  CHECK(a.repairs == b.repairs);
  CHECK(a.clock_steps.empty());
  REQUIRE(a.corrections.size() == b.corrections.size());
  for (std::size_t i = 0; i < a.corrections.size(); ++i) {
    CHECK(a.corrections[i].target == b.corrections[i].target);
    CHECK(a.corrections[i].made_by == b.corrections[i].made_by);
    CHECK(same_line(a.corrections[i].before, b.corrections[i].before));
    CHECK(same_line(a.corrections[i].after, b.corrections[i].after));
  }
  for (std::size_t i = 0; i < a.log.size() && i < b.log.size(); ++i) {
    CHECK(a.log[i].struck == b.log[i].struck);
    CHECK(a.log[i].sense == b.log[i].sense);
    CHECK(a.log[i].event.what == b.log[i].event.what);
    CHECK(a.log[i].as_entered.has_value() == b.log[i].as_entered.has_value());
  }

  // And it is the pour that was meant: six lifts, nine runs, one more struck, two fixes.
  REQUIRE(a.elements[0].lifts.size() == 6);
  CHECK(in_metres(a.elements[0].tops[0].standing()) == doctest::Approx(3.0));
  CHECK(in_metres(a.elements[0].lifts[3].top[0]) == doctest::Approx(2.0));
  CHECK(a.runs.size() == 9);
  CHECK(a.corrections.size() == 3);
  CHECK(a.holds.size() == 1);
  CHECK(a.notes.size() == 1);
}

TEST_CASE("lift after lift: three taps for a lift and two a row, nothing more") {
  Event open = opening();
  open.entry = Entry{open.at, open.at.time_since_epoch(), "boot"};
  Tablet tablet(hung(in_order({open})), moment_of("05:01:00"));
  const std::vector<std::vector<std::string>> rows{{"R1"},       {"R1", "R2"}, {"R2"},
                                                   {"R2", "R3"}, {"R3", "R4"}, {"R4"}};
  for (std::size_t lift = 0; lift < rows.size(); ++lift) {
    const std::string number = std::to_string(lift + 1);
    const int before = tablet.taps;
    tablet.tap("START LIFT " + number);
    tablet.wait(seconds(1200));
    tablet.tap("END LIFT " + number);
    tablet.tap("KEEP");  // the planned top stands as the guess
    CHECK(tablet.taps - before <= 3);
    for (const std::string& row : rows[lift]) {
      const int taps = tablet.taps;
      tablet.tap("RUN " + row);
      tablet.wait(seconds(100));
      tablet.tap("REST " + row);
      CHECK(tablet.taps - taps <= 2);
    }
    tablet.wait(seconds(300));
  }
  CHECK(tablet.taps == 6 * 3 + 9 * 2);
  CHECK(tablet.state->elements[0].lifts.size() == 6);
  CHECK(in_metres(tablet.state->elements[0].tops[1].standing()) == doctest::Approx(3.0));
  CHECK(tablet.state->runs.size() == 9);
  for (const RunState& run : tablet.state->runs) CHECK(run.to.has_value());
}
