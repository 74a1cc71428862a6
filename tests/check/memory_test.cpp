// A check that remembers says what a check from nothing says, whatever state follows whatever.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <random>
#include <sstream>

#include "../pour/random_taps.h"
#include "check/check.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"

using namespace rb;

namespace {

void same_report(const PourState& state, AsOf asof, CheckMemory& memory) {
  const CheckReport fresh = check(state, asof);
  const CheckReport remembered = check(state, asof, memory);
  REQUIRE(remembered.findings == fresh.findings);
  REQUIRE(remembered.lifts == fresh.lifts);
  REQUIRE(remembered.runs == fresh.runs);
  REQUIRE(remembered.power == fresh.power);
  REQUIRE(remembered.generators == fresh.generators);
}

std::vector<Event> demo_events() {
  std::ifstream in{RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl"};
  std::ostringstream text;
  text << in.rdbuf();
  return read_script(text.str(), "demo-pour.jsonl")->events;
}

// A pour of a two-sided wall and a column, with hands that err: events out of order of time, rows
// with no rest, motors missing, readings that fall, corrections.
class RandomPour {
 public:
  explicit RandomPour(unsigned seed) : engine_(seed) {
    add(R"("do":"pour-open","pour":"P","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":1.5}],
"elements":[{"id":"W","length":4,"height":3,"thickness":0.4,"form_rating_kpa":40,"bays":[2,2],"openings":[{"x":1,"z":0.5,"w":0.8,"h":0.6}],
"lifts":[0.5,1,1.5,2],"rows":[
{"id":"A","z":0.3,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1.1,"reach_z":0.5},{"id":"M2","x":3,"reach_x":1,"reach_z":0.5}]},
{"id":"B","z":1.1,"serves":[2,3],"motors":[{"id":"M3","x":1,"reach_x":1.1,"reach_z":0.5},{"id":"M4","x":3,"reach_x":1,"reach_z":0.5}]},
{"id":"A","side":"far","z":0.6,"serves":[1,2],"motors":[{"id":"M5","x":2,"reach_x":2.2,"reach_z":0.7}]}]},
{"id":"K","kind":"column","length":0.6,"height":3,"thickness":0.6,"bays":[0.6],"lifts":[1,2],"rows":[{"id":"A","z":0.6,"serves":[1,2],"motors":[{"id":"M6","x":0.3,"reach_x":0.4,"reach_z":0.8}]}]}],
"power":[{"id":"I","volts":42,"max_amps":20,"motors":["M1","M2","M3","M4","M5"]}],"motor_type":{"amps":7,"force_kn":4,"vpm_max":6000}})");
  }

  std::optional<Event> next() {
    const int back = whole(0, 12) == 0 ? whole(0, 600) : 0;
    at_ += std::chrono::seconds{whole(1, 240)};
    const bool wall = whole(0, 3) > 0;
    const std::string element = wall ? "W" : "K";
    const std::string bay =
        wall && whole(0, 1) == 0 ? fmt::format(R"(,"bay":{})", whole(1, 2)) : "";
    double& z = wall ? wall_ : column_;
    int& lift = wall ? wall_lift_ : column_lift_;
    const std::string row = fmt::format(R"("element":"{}","row":"{}"{})", element,
                                        wall && whole(0, 1) == 0 ? "B" : "A", "");
    const std::string far =
        wall && whole(0, 3) == 0 ? R"("element":"W","row":"A","side":"far")" : row;
    switch (whole(0, 11)) {
      case 0:
        return add(fmt::format(R"("do":"lift-start","element":"{}","lift":{})", element, ++lift),
                   back);
      case 1:
        if (lift > 0 && !bay.empty()) {
          return add(
              fmt::format(R"("do":"bay-start","element":"W","lift":{}{})", std::max(1, lift), bay),
              back);
        }
        [[fallthrough]];
      case 2:
        z = std::min(2.9, z + 0.01 * whole(-5, 25));
        return add(fmt::format(R"("do":"top","element":"{}","height":{}{})", element,
                               std::max(0.0, z), bay),
                   back);
      case 3:
        if (lift == 0) return std::nullopt;
        return add(fmt::format(R"("do":"lift-end","element":"{}","lift":{},"height":{}{})", element,
                               lift, std::max(0.0, z), bay),
                   back);
      case 4:
      case 5:
      case 6:
        return add(fmt::format(R"("do":"run",{},"vpm":6000)", far), back);
      case 7:
      case 8:
        return add(fmt::format(R"("do":"rest",{})", far), back);
      case 9:
        return add(
            fmt::format(R"("do":"hang",{},"motors":["M1"],"cables":{})", row, whole(0, 1) == 0),
            back);
      case 10:
        return add(fmt::format(R"("do":"test","ticket":"T{}","temp":{})", ++tickets_, whole(5, 35)),
                   back);
      default:
        if (whole(0, 2) > 0 || ids_ < 4) {
          return add(
              fmt::format(
                  R"("do":"insert","element":"{}","lift":{}{},"group":3,"spacing":0.3,"seconds":10,"depth_below":0.2)",
                  element, std::max(1, lift), bay),
              back);
        }
        return add(
            fmt::format(R"("do":"strike","target":"e{}","why":"wrong tap")", whole(2, ids_ - 1)),
            0);
    }
  }
  [[nodiscard]] const Event& first() const { return first_; }
  int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine_); }

 private:
  Event add(const std::string& fields, int back = 0) {
    const Moment at = at_ - std::chrono::seconds{back};
    const auto event = parse_event(
        fmt::format(R"({{"id":"e{}","at":"{}","by":"f",{}}})", ++ids_, to_text(at), fields),
        "random");
    REQUIRE_MESSAGE(event, to_text(event.error()));
    if (ids_ == 1) first_ = *event;
    return *event;
  }
  std::mt19937 engine_;
  Moment at_ = *parse_moment("2026-03-02T22:00:00.000Z");
  Event first_;
  double wall_ = 0, column_ = 0;
  int wall_lift_ = 0, column_lift_ = 0, ids_ = 0, tickets_ = 0;
};

}  // namespace

TEST_CASE("through the demo pour, tap by tap, memory changes no finding") {
  const std::vector<Event> events = demo_events();
  PourState state = *fold(std::span{events}.first(1));
  CheckMemory memory;
  for (std::size_t i = 1; i < events.size(); ++i) {
    CAPTURE(i);
    extend(state, events[i]);
    same_report(state, AsOf::now(state, after(state.moment(state.last), seconds(7))), memory);
  }
  same_report(state, AsOf::end(state), memory);
}

TEST_CASE("through random pours with slips and corrections, memory changes no finding") {
  std::size_t findings = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    RandomPour pour(seed);
    PourState state = *fold(std::span{&pour.first(), 1});
    CheckMemory memory;
    for (int i = 0; i < 60; ++i) {
      CAPTURE(i);
      if (const auto event = pour.next()) extend(state, *event);
      const Moment now = after(state.moment(state.last), seconds(pour.whole(0, 300)));
      same_report(state, pour.whole(0, 5) == 0 ? AsOf::end(state) : AsOf::now(state, now), memory);
    }
    findings += check(state, AsOf::end(state)).findings.size();
  }
  CHECK(findings > 200);
}

TEST_CASE("through random pours closed on the way and gone on with, memory changes no finding") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    RandomPour pour(seed);
    PourState state = *fold(std::span{&pour.first(), 1});
    CheckMemory memory;
    const int closes = pour.whole(0, 40);
    for (int i = 0; i < 60; ++i) {
      CAPTURE(i);
      if (i == closes) {
        const Event close{
            EventId{"close"}, state.moment(state.last), PersonId{"f"}, event::PourClose{}, {},
            std::nullopt};
        extend(state, close);
      } else if (const auto event = pour.next()) {
        extend(state, *event);
      }
      const Moment now = after(state.moment(state.last), seconds(pour.whole(0, 300)));
      same_report(state, AsOf::now(state, now), memory);
    }
  }
}

namespace {

constexpr const char* kFullPlan =
    R"({"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":1.5},{"id":"D","unit_weight":23,"slump":0.18,"initial_set_h":3}],
"elements":[{"id":"W","length":4,"height":3,"thickness":0.4,"form_rating_kpa":40,"bays":[2,2],"lifts":[0.5,1,1.5],"rows":[
{"id":"A","z":0.3,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.5},{"id":"M2","x":3,"reach_x":1,"reach_z":0.5}]},
{"id":"B","z":1.1,"serves":[2,3],"motors":[{"id":"M3","x":1,"reach_x":1,"reach_z":0.5}]}]},
{"id":"K","kind":"column","length":0.6,"height":3,"thickness":0.6,"bays":[0.6],"lifts":[1,2],"rows":[{"id":"A","z":0.6,"serves":[1],"motors":[{"id":"M6","x":0.3,"reach_x":0.4,"reach_z":0.8}]}]}],
"power":[{"id":"I","volts":42,"max_amps":12,"motors":["M1","M3"]},{"id":"J","volts":42,"max_amps":5,"motors":["M2","M6"]}],
"motor_type":{"amps":7,"force_kn":4,"vpm_max":6000}})";

}  // namespace

TEST_CASE(
    "whatever is entered, struck or mended, and whenever it is looked at, memory changes no "
    "finding") {
  std::map<std::string, std::size_t> seen;
  for (unsigned seed = 4001; seed <= 4060; ++seed) {
    CAPTURE(seed);
    RandomTaps taps(seed, kFullPlan);
    PourState state = *fold(std::vector<Event>{taps.opening});
    CheckMemory memory;
    PourState other = state;  // goes on from an earlier moment in the same memory
    for (int i = 0; i < 90; ++i) {
      CAPTURE(i);
      const Event event = taps.next();
      extend(i % 17 == 16 ? other : state, event);
      if (i % 4 == 3) continue;  // two events between two looks
      const PourState& looked = i % 17 == 16 ? other : state;
      const Seconds off{static_cast<double>((i * 37) % 400 - 60)};
      AsOf asof = AsOf::now(looked, after(looked.moment(looked.last), off));
      if (i % 11 == 10) asof = AsOf::end(looked);
      same_report(looked, asof, memory);
      if (i % 30 == 29) other = state;
    }
    for (const Finding& f : check(state, AsOf::end(state)).findings) ++seen[f.rule];
  }
  for (const std::string& rule : std::vector<std::string>{
           "head-high", "row-empty", "cable-open", "run-unended", "speed-out", "load-old",
           "power-over", "rise-fast", "entered-before", "kept-late"}) {
    CAPTURE(rule);
    CHECK(seen[rule] > 1);
  }
}

TEST_CASE("another pour in the same memory is judged for itself") {
  CheckMemory memory;
  const PourState demo = *fold(demo_events());
  RandomPour pour(7);
  PourState other = *fold(std::span{&pour.first(), 1});
  for (int i = 0; i < 30; ++i) {
    if (const auto event = pour.next()) extend(other, *event);
  }
  for (const PourState* state : std::vector<const PourState*>{&demo, &other, &demo})
    same_report(*state, AsOf::end(*state), memory);
}

namespace {

enum class Knit { row, insertion };

// A wall of two lifts, one row over their joint, and what happened to it, ten minutes apart.
PourState two_lifts(Knit by) {
  std::vector<Event> events;
  const auto add = [&](const std::string& fields) {
    const Moment at = *parse_moment("2026-03-02T22:00:00.000Z") +
                      std::chrono::minutes{10 * static_cast<int>(events.size())};
    events.push_back(*parse_event(fmt::format(R"({{"id":"e{}","at":"{}","by":"f",{}}})",
                                              events.size() + 1, to_text(at), fields),
                                  "two lifts"));
  };
  add(R"("do":"pour-open","pour":"P","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":3.5}],
"elements":[{"id":"W","length":2,"height":3,"thickness":0.3,"form_rating_kpa":40,"lifts":[1,2],"rows":[
{"id":"A","z":1,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1.1,"reach_z":1}]}]}]})");
  add(R"("do":"hang","element":"W","row":"A","motors":["M1"],"cables":true)");
  add(R"("do":"lift-start","element":"W","lift":1)");
  add(R"("do":"lift-end","element":"W","lift":1,"height":1)");
  add(R"("do":"lift-start","element":"W","lift":2)");
  add(R"("do":"top","element":"W","height":1.2)");
  if (by == Knit::row) {
    add(R"("do":"run","element":"W","row":"A","vpm":6000)");
    add(R"("do":"rest","element":"W","row":"A")");
  } else {
    add(R"("do":"insert","element":"W","lift":2,"group":3,"spacing":0.3,"seconds":10,"depth_below":0.2)");
    add(R"("do":"note","text":"inserted","element":"W")");
  }
  add(R"("do":"top","element":"W","height":1.4)");
  add(R"("do":"note","text":"seen","element":"W")");
  return *fold(events);
}

bool finds(const CheckReport& report, const std::string& rule) {
  return std::any_of(report.findings.begin(), report.findings.end(),
                     [&](const Finding& f) { return f.rule == rule; });
}

Event corrected(const char* fields) {
  return *parse_event(
      fmt::format(R"({{"id":"c1","at":"2026-03-03T02:00:00.000Z","by":"f",{}}})", fields), "c1");
}

}  // namespace

TEST_CASE("a joint that was knitted in time is looked at again when what knitted it is struck") {
  for (const Knit by : {Knit::row, Knit::insertion}) {
    CAPTURE(static_cast<int>(by));
    PourState state = two_lifts(by);
    CheckMemory memory;
    for (int look = 0; look < 2; ++look) {
      REQUIRE_FALSE(finds(check(state, AsOf::end(state), memory), "knit-late"));
    }
    extend(state, corrected(R"("do":"strike","target":"e7","why":"another place")"));
    CHECK(finds(check(state, AsOf::end(state), memory), "knit-late"));
    same_report(state, AsOf::end(state), memory);
  }
}

TEST_CASE("a run that is over is looked at again when a later top is mended") {
  PourState state = two_lifts(Knit::row);
  CheckMemory memory;
  for (int look = 0; look < 2; ++look) {
    REQUIRE_FALSE(finds(check(state, AsOf::end(state), memory), "head-high"));
  }
  // The concrete rose as it ran: from 1.2 m at its start towards what is read after its end.
  extend(state, corrected(R"("do":"fix","target":"e9","set":{"height":2.9},"why":"misread")"));
  CHECK(finds(check(state, AsOf::end(state), memory), "head-high"));
  same_report(state, AsOf::end(state), memory);
}
