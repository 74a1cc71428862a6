// moved and joint: they read, write and fold; a bad field is refused by its name; a correction
// takes back the hold that came with what moved.
#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"

using namespace rb;

namespace {

const std::string kPlan =
    R"({"mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":4,"height":3,"thickness":0.3,"bays":[2,2]}]})";

std::string line(const std::string& at, const std::string& what) {
  return R"({"at":"2026-03-02T05:)" + at + R"(:00.000Z","by":"f1",)" + what + "}\n";
}

PourState folded(const std::string& lines) {
  const auto script =
      read_script(line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) + lines, "a.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  // What is written reads the same.
  const auto again = read_script(write_script(script->events), "again.jsonl");
  REQUIRE(again);
  CHECK(again->events == script->events);
  auto state = fold(script->events);
  REQUIRE(state);
  return *std::move(state);
}

std::string refusal(const std::string& what) {
  const auto event = parse_event(line("01", what), "line 2");
  REQUIRE_FALSE(event);
  return to_text(event.error());
}

std::string refused(const std::string& what) {
  const auto script = read_script(
      line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) + line("10", what), "a.jsonl");
  REQUIRE_FALSE(script);
  return to_text(script.error());
}

}  // namespace

TEST_CASE("what moved is kept and holds the pour; taken back, the hold goes with it") {
  const std::string moved = R"("do":"moved","what":"motor","element":"W1","note":"R2 end")";
  const PourState state = folded(line("10", moved));
  REQUIRE(state.moved.size() == 1);
  CHECK(state.moved[0].what.thing == event::Moving::motor);
  CHECK(state.moved[0].what.note == "R2 end");
  REQUIRE(state.holds.size() == 1);
  CHECK(state.holds[0].moved == event::Moving::motor);
  const std::string named = R"("id":"m1",)" + moved;
  const PourState struck =
      folded(line("10", named) + line("20", R"("do":"strike","target":"m1","why":"wrong tap")"));
  CHECK(struck.moved.empty());
  CHECK(struck.holds.empty());
  const PourState fixed = folded(
      line("10", named) +
      line("20", R"("do":"fix","target":"m1","set":{"what":"form"},"why":"it was the form")"));
  REQUIRE(fixed.moved.size() == 1);
  CHECK(fixed.moved[0].what.thing == event::Moving::form);
  CHECK(fixed.holds[0].moved == event::Moving::form);
}

TEST_CASE("a decision on a joint names its element, and its lift and bay where it is told") {
  const PourState state = folded(
      line("10", R"("do":"joint","element":"W1","lift":1,"bay":2,"decision":"keyed by hand")"));
  REQUIRE(state.joints.size() == 1);
  CHECK(state.joints[0].bay == 1);
  CHECK(state.joints[0].what.lift == 1);
  CHECK(state.joints[0].what.decision == "keyed by hand");
}

TEST_CASE("a bad field of them is refused by its name") {
  CHECK(refusal(R"("do":"moved","what":"crane","element":"W1")")
            .find("field what: is \"crane\"; one of form, motor was expected") !=
        std::string::npos);
  CHECK(refusal(R"("do":"moved","what":"form")").find("field element") != std::string::npos);
  CHECK(refusal(R"("do":"joint","element":"W1")").find("field decision") != std::string::npos);
  CHECK(refusal(R"("do":"truck","ticket":"T","mix":"A","volume":6,"water_added":-1,)"
                R"("batched":"2026-03-02T04:00:00Z","arrived":"2026-03-02T04:50:00Z")")
            .find("field water_added") != std::string::npos);
  CHECK(refused(R"("do":"joint","element":"W1","bay":7,"decision":"x")")
            .find("bay 7 is not in the plan") != std::string::npos);
  CHECK(refused(R"("do":"moved","what":"form","element":"W9")")
            .find("element W9 is not in the plan") != std::string::npos);
}

namespace {

std::string bay_start(int bay, int lift = 1) {
  return R"("do":"bay-start","element":"W1","lift":)" + std::to_string(lift) + R"(,"bay":)" +
         std::to_string(bay);
}
std::string top(double height, int bay) {
  return R"("do":"top","element":"W1","height":)" + std::to_string(height) + R"(,"bay":)" +
         std::to_string(bay);
}
const std::string kLiftStart = R"("do":"lift-start","element":"W1","lift":1)";

double height(const PourState& state, std::size_t bay, double minute) {
  return in_metres(state.elements[0].tops[bay].at(seconds(60 * minute)));
}

}  // namespace

TEST_CASE("a bay stands flat until concrete comes to it, and rises straight from there") {
  const PourState state =
      folded(line("10", kLiftStart) + line("10", bay_start(1)) + line("30", bay_start(2)) +
             line("40", top(0.6, 1)) + line("50", top(0.4, 2)));
  CHECK(height(state, 0, 25) == doctest::Approx(0.3));
  CHECK(height(state, 1, 30) == 0);
  CHECK(height(state, 1, 40) == doctest::Approx(0.2));
  const LiftState& lift = state.elements[0].lifts[0];
  CHECK(lift.bay_wise);
  CHECK_FALSE(lift.start_missing(0));
  CHECK_FALSE(lift.start_missing(1));
  CHECK(lift.began(1) == seconds(1800));
  CHECK(*lift.bays[1].read == seconds(3000));
}

TEST_CASE("a bay with neither start nor reading is empty; one with readings only lacks its start") {
  const PourState state = folded(line("10", kLiftStart) + line("40", top(0.6, 1)));
  const LiftState& lift = state.elements[0].lifts[0];
  CHECK(lift.start_missing(0));
  CHECK_FALSE(lift.start_missing(1));
  CHECK(lift.empty(1));
  CHECK(height(state, 0, 25) == doctest::Approx(0.3));  // as drawn
  const PourState even =
      folded(line("10", kLiftStart) + line("40", R"("do":"top","element":"W1","height":0.6)"));
  CHECK_FALSE(even.elements[0].lifts[0].bay_wise);
  CHECK_FALSE(even.elements[0].lifts[0].start_missing(0));
}

TEST_CASE("a bay-start after the bay's first higher reading, or a second one, says nothing new") {
  const PourState state =
      folded(line("10", kLiftStart) + line("20", bay_start(1)) + line("25", bay_start(1)) +
             line("30", top(0.6, 1)) + line("31", top(0.3, 2)) + line("35", bay_start(2)));
  CHECK(state.log[3].sense == LogEntry::Sense::repeats);
  CHECK(state.log[6].sense == LogEntry::Sense::repeats);
  CHECK(state.elements[0].lifts[0].start_missing(1));
  // Corrected to when it was, it counts; struck, it is as if it had never been.
  const std::string named = R"("id":"b2",)" + bay_start(2);
  const std::string fix =
      R"("do":"fix","target":"b2","set":{"at":"2026-03-02T05:20:00.000Z"},"why":"tapped late")";
  const std::string lines = line("10", kLiftStart) + line("30", top(0.6, 1)) +
                            line("31", top(0.3, 2)) + line("35", named);
  const PourState fixed = folded(lines + line("40", fix));
  CHECK(fixed.elements[0].lifts[0].began(1) == seconds(1200));
  CHECK(height(fixed, 1, 20) == 0);
  const PourState struck =
      folded(lines + line("40", fix) + line("41", R"("do":"strike","target":"b2","why":"no")"));
  CHECK(struck.elements[0].lifts[0].start_missing(1));
}

TEST_CASE("a bay-start names a lift that was started and a bay of the plan") {
  CHECK(refused(bay_start(1)).find("lift 1 of W1 has not been started by then") !=
        std::string::npos);
  const auto bad = read_script(line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) +
                                   line("10", kLiftStart) + line("11", bay_start(3)),
                               "a.jsonl");
  REQUIRE_FALSE(bad);
  CHECK(to_text(bad.error()).find("bay 3 is not in the plan") != std::string::npos);
  CHECK(refusal(R"("do":"bay-start","element":"W1","lift":1)").find("bay") != std::string::npos);
}
