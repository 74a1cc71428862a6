#include "pour/log/script.h"

#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/plan/plan_json.h"

using namespace rb;

namespace {

const char* kOpen =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"bays":[3,3],)"
    R"("form_rating_kpa":60,"lifts":[0.5,1.0],)"
    R"("rows":[{"id":"R1","z":0.4,"motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.7},)"
    R"({"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.7}],"serves":[1,2]}]}]}})"
    "\n";

std::string script(const std::string& rest) {
  return kOpen + rest;
}

}  // namespace

TEST_CASE("a script reads, writes and reads again to the same state") {
  const std::string text = script(
      R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"hang","element":"W1","row":"R1","motors":["M1","M2"],"cables":true,"weather":"fog"})"
      "\n"
      R"({"at":"2026-03-02T05:02:00Z","by":"f1","do":"lift-start","element":"W1","lift":1})"
      "\n\n"
      R"({"at":"2026-03-02T05:12:00Z","by":"f1","do":"lift-end","element":"W1","lift":1,"height":0.5})"
      "\n"
      R"({"at":"2026-03-02T05:12:10Z","by":"f1","do":"run","element":"W1","row":"R1","vpm":6000})"
      "\n"
      R"({"id":"r","at":"2026-03-02T05:13:10Z","by":"f1","do":"rest","element":"W1","row":"R1"})"
      "\n"
      R"({"at":"2026-03-02T05:14:00Z","by":"f1","do":"fix","target":"r","set":{"at":"2026-03-02T05:13:50Z"},"why":"tapped early"})"
      "\n");
  const auto first = read_script(text, "a.jsonl");
  REQUIRE_MESSAGE(first, to_text(first.error()));
  CHECK(first->pour == PourId{"P1"});
  CHECK(first->events.size() == 7);
  CHECK(first->events[1].extra == R"({"weather":"fog"})");
  const auto again = read_script(write_script(first->events), "b.jsonl");
  REQUIRE_MESSAGE(again, to_text(again.error()));
  CHECK(first->events == again->events);
  const auto state = fold(first->events);
  REQUIRE(state);
  CHECK(*state == *fold(again->events));
  REQUIRE(state->runs.size() == 1);
  CHECK((*state->runs[0].to - state->runs[0].from) == seconds(100));
  REQUIRE(state->corrections.size() == 1);
  CHECK(state->corrections[0].before.find("05:13:10") != std::string::npos);
  CHECK(state->corrections[0].after.find("05:13:50") != std::string::npos);
}

TEST_CASE("a bad line names file, line and field, and nothing is kept") {
  struct Row {
    const char* line;
    const char* expect;
  };
  const Row rows[] = {
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"dance"})", "a.jsonl line 2, field do"},
      {R"({"at":"2026-03-02","by":"f1","do":"hold","reason":"rain"})", "line 2, field at"},
      {R"({"at":"2026-03-02T05:01:00Z","do":"hold","reason":"rain"})", "line 2, field by"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"hold"})", "line 2, field reason"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"hold","reason":"x","chosen":"tired"})",
       "line 2, field chosen"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"sign","role":"boss","verdict":"fine"})",
       "line 2, field role"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":-1})",
       "line 2, field height"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":"1 m"})",
       "line 2, field height"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":1e999})",
       "line 2"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":NaN})",
       "line 2"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":4})",
       "above the form"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W9","height":1})", "W9"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"top","element":"W1","height":1,"bay":3})",
       "bay 3"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"run","element":"W1","row":"R7","vpm":6000})",
       "R7"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"lift-end","element":"W1","lift":1,"height":1})",
       "has not been started"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"fix","target":"x","set":{},"why":"w"})",
       "field target"},
      {R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"pour-open","pour":"P2","plan":{}})",
       "line 2"},
      {R"(not json)", "line 2: is not JSON"},
      {R"([1,2])", "line 2"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto read = read_script(script(std::string{row.line} + "\n"), "a.jsonl");
    REQUIRE_FALSE(read);
    CAPTURE(to_text(read.error()));
    CHECK(to_text(read.error()).find(row.expect) != std::string::npos);
  }
}

TEST_CASE(
    "unknown fields are kept wherever in the plan they stand, and go with what they belong to") {
  const char* text =
      R"({"colour":"grey","people":[{"id":"f1","name":"F","phone":"5"}],)"
      R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5,"supplier":"S"}],)"
      R"("elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"bays":[3,3],)"
      R"("drawing":"D-7","rise_limit":null,)"
      R"("rows":[{"id":"R1","z":0.4,"crew":{"lead":"B"},"motors":[{"id":"M1","x":1.5,"reach_x":1.6,)"
      R"("reach_z":0.7,"serial":[1,2]}]}]}],"limits":{"dose_min_s":80,"our_own":3},)"
      R"("motor_type":{"amps":4,"force_kn":4,"vpm_max":6000,"make":"X"}})";
  const auto plan = parse_plan(text, "the plan");
  REQUIRE_MESSAGE(plan, (plan ? "" : to_text(plan.error())));
  const std::string written = to_json(*plan);
  for (const char* kept :
       {R"("colour":"grey")", R"("phone":"5")", R"("supplier":"S")", R"("drawing":"D-7")",
        R"("crew":{"lead":"B"})", R"("serial":[1,2])", R"("our_own":3)", R"("make":"X")"}) {
    CAPTURE(kept);
    CHECK(written.find(kept) != std::string::npos);
  }
  const auto again = parse_plan(written, "what was written");
  REQUIRE(again);
  CHECK(*again == *plan);
  // A plan without the row and the motor type is written without what belonged to them.
  Plan less = *plan;
  less.elements[0].rows.clear();
  less.motor_type.reset();
  const std::string shorter = to_json(less);
  CHECK(shorter.find("crew") == std::string::npos);
  CHECK(shorter.find("make") == std::string::npos);
  CHECK(shorter.find("D-7") != std::string::npos);
  CHECK(parse_plan(shorter, "the shorter"));
}

TEST_CASE("a plan reads the same when written, whatever its unknown fields and numbers are") {
  const auto with = [](const std::string& more, const std::string& row_more,
                       const std::string& force) {
    return R"({"units":"us","people":[{"id":"f1","name":"F","rlore":"foreman"}],)"
           R"("mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
           R"("elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"rows":[)"
           R"({"id":"R1","z":0.4,"motors":[{"id":"M1","x":1.5,"reach_x":1,"reach_z":0.7}]},)"
           R"({"id":"R1","side":"far","z":0.4,)" +
           row_more + R"("motors":[{"id":"M2","x":1.5,"reach_x":1,"reach_z":0.7}]}]}],)" + more +
           R"("motor_type":{"amps":4,"vpm_max":5999.99999999999999,"force_kn":)" + force + "}}";
  };
  const std::string ours = R"("@inside":{"a":1},"inside":{"b":{"@items":2}},"items":{"people":3},)";
  for (const std::string& text :
       {with("", "", "4"), with(ours, "", "4"), with("", R"("crew":"B",)", "4"),
        with(R"("limits":{"items":{"f1":{"x":1}},"dose_min_s":80},)", R"("fields":{"id":"R1"},)",
             "4.08888888888888888888888888888888888888"),
        with(R"("power":[{"id":"I1","volts":42,"max_amps":40.333333333333336,"motors":["M1"],)"
             R"("cable":{"mm2":3.3333333333333335,"length":25,"id":"c"}}],)",
             "", "0.1234567890123456789"),
        with(R"("power":[{"id":"I1","volts":42,"max_amps":40,"motors":["M1"],)"
             R"("trunk":{"mm2":3.3333333333333335,"length":25,"colour":"red"},)"
             R"("generator":{"id":"G","kva":10.1,"derate":0.85,"hired":true},)"
             R"("internal":{"heads":2,"amps":3.3}},)"
             R"({"id":"I2","volts":42,"max_amps":40,"motors":["M2","M3"],)"
             R"("trunk":{"mm2":4,"length":25,"motors":["M3"]},"generator":{"kva":5}}],)",
             "", "4"),
        with("", "", "1.51e-308"), with("", "", "4e-324")}) {
    CAPTURE(text);
    const auto plan = parse_plan(text, "the plan");
    REQUIRE_MESSAGE(plan, (plan ? "" : to_text(plan.error())));
    const std::string written = to_json(*plan);
    const auto again = parse_plan(written, "what was written");
    REQUIRE_MESSAGE(again, (again ? "" : to_text(again.error())));
    CHECK(*again == *plan);
    CHECK(to_json(*again) == written);
    CHECK(written.find(R"("rlore":"foreman")") != std::string::npos);
    if (text.find("@inside") != std::string::npos) {
      CHECK(written.find(R"("@inside":{"a":1})") != std::string::npos);
      CHECK(written.find(R"("items":{"people":3})") != std::string::npos);
    }
    // What stands on the far row stays there and comes to no other.
    const auto crew = written.find("crew");
    if (text.find("crew") == std::string::npos) continue;
    REQUIRE(crew != std::string::npos);
    CHECK(written.find("crew", crew + 1) == std::string::npos);
    Plan far_gone = *plan;
    far_gone.elements[0].rows.pop_back();
    CHECK(to_json(far_gone).find("crew") == std::string::npos);
  }
}

TEST_CASE("a line nested beyond all reason is refused, not followed") {
  const std::string deep = std::string(200000, '[') + std::string(200000, ']');
  const auto event = parse_event(
      R"({"at":"2026-03-02T05:00:00Z","by":"f1","do":"note","text":"x","more":)" + deep + "}",
      "line 2");
  REQUIRE_FALSE(event);
  CHECK(to_text(event.error()).find("line 2") == 0);
  CHECK(parse_event(R"({"at":"2026-03-02T05:00:00Z","by":"f1","do":"note","text":"[[[\"[["})", ""));
}

TEST_CASE("how far a time may be off is read, written, and gone once the time is put right") {
  const char* line =
      R"({"at":"2026-03-02T05:02:00.000Z","by":"f1","do":"run","element":"W1","row":"R1","uncertain_s":1.5})";
  const auto event = parse_event(line, "line 1");
  REQUIRE_MESSAGE(event, to_text(event.error()));
  CHECK(event->uncertain == seconds(1.5));
  CHECK(event->extra.empty());
  const auto again = parse_event(to_line(*event), "line 1");
  REQUIRE(again);
  CHECK(*again == *event);
  Event sure = *event;
  sure.uncertain = Seconds{0};
  CHECK_FALSE(sure == *event);
  CHECK(to_line(sure).find("uncertain_s") == std::string::npos);
  const auto right = with_fields(*event, R"({"at":"2026-03-02T05:01:58.000Z"})", "a fix");
  REQUIRE(right);
  CHECK(right->uncertain == Seconds{0});
  const auto moved = with_fields(*event, R"({"row":"R2"})", "a fix");
  REQUIRE(moved);
  CHECK(moved->uncertain == seconds(1.5));
  CHECK_FALSE(parse_event(R"({"at":"2026-03-02T05:02:00Z","by":"f1","do":"rest","element":"W1",)"
                          R"("row":"R1","uncertain_s":-1})",
                          "line 1"));
}
