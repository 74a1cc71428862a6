// What the plan has next. The rules are the trade's common practice of leapfrogging rows; there is
// no published source.
#include "pour/outlook/next_steps.h"
#include "pour/log/log_entry.h"

#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"

using namespace rb;

namespace {

// Two lifts a row; R3 wants the motors of R1, R4 those of R2.
const char* kLeapfrog =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("limits":{"dose_min_s":90,"dose_max_s":120},)"
    R"("elements":[{"id":"W1","length":3,"height":2.4,"thickness":0.3,"bays":[3],)"
    R"("lifts":[0.6,1.2,1.8,2.4],"rows":[)"
    R"({"id":"R1","z":0.3,"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.5}],"serves":[1]},)"
    R"({"id":"R2","z":0.9,"motors":[{"id":"M2","x":1,"reach_x":1,"reach_z":0.5}],"serves":[1,2]},)"
    R"({"id":"R3","z":1.5,"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.5}],"serves":[2,3]},)"
    R"({"id":"R4","z":2.1,"motors":[{"id":"M2","x":1,"reach_x":1,"reach_z":0.5}],"serves":[3,4]})"
    R"(]}]}})";

class Leapfrog {
 public:
  Leapfrog() { line(kLeapfrog); }
  Leapfrog& at(const char* clock, const std::string& what) {
    return line(std::string{R"({"by":"f1","at":"2026-03-02T)"} + clock + R"(Z","element":"W1",)" +
                what + "}");
  }
  Leapfrog& row(const char* clock, const char* what, const char* row) {
    const std::string more =
        std::string(what) == "hang" ? R"(,"motors":[],"cables":true)" : std::string{};
    return at(clock, std::string{R"("do":")"} + what + R"(","row":")" + row + "\"" + more);
  }
  [[nodiscard]] PourState state() const {
    auto folded = fold(events);
    REQUIRE(folded);
    return *folded;
  }

 private:
  Leapfrog& line(const std::string& text) {
    auto event = parse_event(text, "test");
    REQUIRE_MESSAGE(event, to_text(event.error()));
    event->id = EventId{"e" + std::to_string(events.size())};
    events.push_back(*event);
    return *this;
  }
  std::vector<Event> events;
};

Leapfrog hung() {
  Leapfrog story;
  story.row("05:01:00", "hang", "R1").row("05:02:00", "hang", "R2");
  return story;
}
// Lift 1 placed by 05:30.
Leapfrog placed() {
  Leapfrog story = hung();
  story.at("05:10:00", R"("do":"lift-start","lift":1)")
      .at("05:30:00", R"("do":"lift-end","lift":1,"height":0.6)");
  return story;
}
Seconds clock(const PourState& state, const char* text) {
  return state.clock(*parse_moment(std::string("2026-03-02T") + text + ".000Z"));
}

}  // namespace

TEST_CASE(
    "a row waits to be run when it serves the lift, reaches concrete and has not run enough") {
  const PourState before = hung().state();
  CHECK(rows_to_run(before, 0, clock(before, "05:05:00")).empty());  // nothing placed

  const PourState state = placed().state();
  const auto rows = rows_to_run(state, 0, clock(state, "05:31:00"));
  REQUIRE(rows.size() == 2);  // R3 and R4 serve later lifts
  CHECK(rows[0] == RowToRun{0, seconds(90), false});
  CHECK(rows[1] == RowToRun{1, seconds(90), false});
}

TEST_CASE("a running row is named after those at rest and leaves the list at the band") {
  Leapfrog story = placed();
  story.row("05:31:00", "run", "R1");
  const PourState state = story.state();
  const auto rows = rows_to_run(state, 0, clock(state, "05:31:30"));
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].row == 1);
  CHECK(rows[1] == RowToRun{0, seconds(60), true});
  CHECK(rows_to_run(state, 0, clock(state, "05:32:29")).size() == 2);
  CHECK(rows_to_run(state, 0, clock(state, "05:32:30")).size() == 1);  // 90 s: enough
}

TEST_CASE("a row that is due and hangs nowhere is to be hung first, after those that may run") {
  Leapfrog story = placed();
  story.row("05:31:00", "take-down", "R1");
  const PourState state = story.state();
  const auto rows = rows_to_run(state, 0, clock(state, "05:32:00"));
  REQUIRE(rows.size() == 2);
  CHECK(rows[0] == RowToRun{1, seconds(90), false});
  CHECK(rows[1] == RowToRun{0, seconds(90), false, RunWait::not_hung});
}

TEST_CASE("no row is wanted once its concrete may have set, nor after something moved in a hold") {
  Leapfrog story = placed();
  const PourState state = story.state();
  CHECK(run_answers(state, 0, clock(state, "05:32:00"))[0].wanted());
  CHECK(run_answers(state, 0, clock(state, "18:00:00"))[0].wait == RunWait::over_set);
  CHECK(run_answers(state, 0, clock(state, "05:32:00"))[2].wait == RunWait::empty);
  CHECK(rows_to_run(state, 0, clock(state, "18:00:00")).empty());
  // The hold came first and had another reason.
  story.at("05:33:00", R"("do":"hold","reason":"rain")");
  CHECK_FALSE(cleared_off(story.state()));
  story.at("05:34:00", R"("do":"moved","what":"form")");
  const PourState moved = story.state();
  CHECK(cleared_off(moved));
  CHECK(run_answers(moved, 0, clock(moved, "05:35:00"))[0].wait == RunWait::cleared);
  CHECK(rows_to_run(moved, 0, clock(moved, "05:35:00")).empty());
  story.at("05:36:00", R"("do":"resume")");
  CHECK_FALSE(cleared_off(story.state()));
}

TEST_CASE("motors move when their row serves no lift to come and has run enough") {
  Leapfrog story = placed();
  const PourState early = story.state();
  // Lift 1 is placed and R1 serves nothing else, but it has not run yet.
  CHECK(motors_to_move(early, 0, clock(early, "05:31:00")).empty());
  story.row("05:31:00", "run", "R1");
  const PourState running = story.state();
  const auto while_running = motors_to_move(running, 0, clock(running, "05:33:00"));
  REQUIRE(while_running.size() == 1);
  CHECK(while_running[0].from[0].running);
  story.row("05:33:00", "rest", "R1");
  const PourState state = story.state();
  const auto moves = motors_to_move(state, 0, clock(state, "05:34:00"));
  REQUIRE(moves.size() == 1);  // R2 still serves lift 2: its motors stay
  CHECK(moves[0].row == 2);
  CHECK(moves[0].lift == 2);
  REQUIRE(moves[0].from.size() == 1);
  CHECK(moves[0].from[0] == MotorShift::From{0, 0, 1, false});
  CHECK(moves[0].down == 0);
}

TEST_CASE("motors that came down are to be hung on the row that wants them, and then no more") {
  Leapfrog story = placed();
  story.row("05:31:00", "run", "R1").row("05:33:00", "rest", "R1");
  story.row("05:34:00", "take-down", "R1");
  const PourState down = story.state();
  const auto moves = motors_to_move(down, 0, clock(down, "05:35:00"));
  REQUIRE(moves.size() == 1);
  CHECK(moves[0].row == 2);
  CHECK(moves[0].from.empty());
  CHECK(moves[0].down == 1);
  story.row("05:36:00", "hang", "R3");
  const PourState up = story.state();
  CHECK(motors_to_move(up, 0, clock(up, "05:37:00")).empty());
}

TEST_CASE("a motor goes to the first row in line that wants it") {
  Leapfrog story;  // nothing hung: M1 goes to R1, not to R3
  const PourState state = story.state();
  const auto moves = motors_to_move(state, 0, clock(state, "05:05:00"));
  REQUIRE(moves.size() == 2);
  CHECK(moves[0].row == 0);
  CHECK(moves[1].row == 1);
}

TEST_CASE("the end of a discharge may be logged after its beginning") {
  Leapfrog story;
  const std::string truck =
      R"("do":"truck","ticket":"T1","mix":"C1","volume":3,"batched":"2026-03-02T04:30:00Z",)"
      R"("arrived":"2026-03-02T05:00:00Z")";
  story.at("05:01:00", truck).at("05:10:00", R"("do":"discharge","ticket":"T1")");
  CHECK_FALSE(story.state().trucks[0].ended());
  story.at("05:40:00", R"("do":"discharge","ticket":"T1","ended":"2026-03-02T05:40:00Z")");
  const PourState state = story.state();
  REQUIRE(state.trucks.size() == 1);
  CHECK(in_seconds(*state.trucks[0].discharged()) == doctest::Approx(600));
  CHECK(in_seconds(*state.trucks[0].ended()) == doctest::Approx(2400));
  CHECK(state.log.back().sense == LogEntry::Sense::counts);
  // A third says nothing new.
  story.at("05:50:00", R"("do":"discharge","ticket":"T1","ended":"2026-03-02T05:50:00Z")");
  CHECK(story.state().log.back().sense == LogEntry::Sense::repeats);
  CHECK(in_seconds(*story.state().trucks[0].ended()) == doctest::Approx(2400));
}
