// The plan amended while the pour goes on: which paths may be, that a bad value is refused by the
// plan's own reader, and that what was logged before goes by the plan as it was.
#include <doctest/doctest.h>

#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/form.h"
#include "pour/plan/amend.h"
#include "pour/plan/plan_json.h"

using namespace rb;

namespace {

const std::string kPlan =
    R"({"name":"Wall","colour":"grey","mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
    R"("people":[{"id":"f1","name":"A. Reyes","role":"foreman"}],)"
    R"("elements":[{"id":"W/1","length":4,"height":3,"thickness":0.3,"lifts":[0.6,1.2],)"
    R"("form_rating_kpa":60,"rows":[{"id":"R1","side":"near","z":0.5,"serves":[1],"motors":[)"
    R"({"id":"M1","x":1,"reach_x":1,"reach_z":0.6}]}]}]})";
const std::string kRow2 = R"({"z":0.9,"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.6}]})";

Plan plan() {
  auto read = parse_plan(kPlan, "plan");
  REQUIRE(read);
  return *std::move(read);
}

std::string refused(const std::string& path, const std::string& value) {
  const auto made = amended(plan(), path, value);
  REQUIRE_MESSAGE(!made, path);
  return to_text(made.error());
}
bool says(const std::string& text, const char* part) {
  CAPTURE(text);
  return text.find(part) != std::string::npos;
}

std::string line(const std::string& at, const std::string& what) {
  return R"({"at":"2026-03-02T05:)" + at + R"(:00.000Z","by":"f1",)" + what + "}\n";
}
std::string amend(const std::string& path, const std::string& value) {
  return R"("do":"amend","path":")" + path + R"(","value":)" + value + R"(,"why":"as built")";
}
PourState folded(const std::string& lines) {
  const auto script =
      read_script(line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) + lines, "a.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  auto state = fold(script->events);
  REQUIRE(state);
  auto grown = fold(std::span{script->events}.first(1));
  REQUIRE(grown);
  for (std::size_t i = 1; i < script->events.size(); ++i) extend(*grown, script->events[i]);
  CHECK(*grown == *state);
  return *std::move(state);
}
std::string refused_line(const std::string& lines) {
  const auto script =
      read_script(line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) + lines, "a.jsonl");
  REQUIRE_FALSE(script);
  return to_text(script.error());
}

const std::string kWall = amend_path({"elements", "W/1"});
const std::string kThick = kWall + "/thickness";
const std::string kOpening = R"("do":"run","element":"W/1","row":"R1")";

}  // namespace

TEST_CASE("each path of the list changes what it names, and nothing else") {
  CHECK(kWall == "elements/W~11");
  Plan expected = plan();
  expected.name = "Wall, north";
  CHECK(amended(plan(), "name", R"("Wall, north")")->plan == expected);
  expected = plan();
  expected.people.push_back({PersonId{"q1"}, "K. Lindqvist", "inspector"});
  CHECK(amended(plan(), "people/q1", R"({"name":"K. Lindqvist","role":"inspector"})")->plan ==
        expected);
  expected = plan();
  expected.people[0].role = "foreman, inspector";
  const auto role = amended(plan(), "people/f1/role", R"("foreman, inspector")");
  CHECK(role->plan == expected);
  CHECK(role->was == R"("foreman")");
  expected = plan();
  expected.elements[0].thickness = metres(0.35);
  CHECK(amended(plan(), kThick, "0.35")->plan == expected);
  expected = plan();
  expected.elements[0].rows[0].z = metres(0.6);
  const auto moved = amended(plan(), kWall + "/rows/near/R1/z", "0.6");
  CHECK(moved->plan == expected);
  REQUIRE(moved->row_moved);
  CHECK(moved->row_moved->second == 0);
  const auto row = amended(plan(), kWall + "/rows/far/R1", kRow2);
  REQUIRE(row);
  CHECK(row->row_added_to == std::size_t{0});
  REQUIRE(row->plan.elements[0].rows.size() == 2);
  CHECK(row->plan.elements[0].rows[1].side == Side::far_side);
  CHECK(row->plan.elements[0].rows[0] == plan().elements[0].rows[0]);
  const auto mix =
      amended(plan(), "mixes/B", R"({"unit_weight":23,"slump":0.1,"initial_set_h":4})");
  REQUIRE(mix);
  CHECK(mix->plan.mixes.size() == 2);
  CHECK(mix->plan.extra == plan().extra);
}

TEST_CASE("what findings are held to, and what was logged goes by, is not amended") {
  for (const std::string path :
       {"limits/dose_min_s", "elements/W~11/form_rating_kpa", "elements/W~11/rise_limit",
        "elements/W~11/length", "elements/W~11/bays", "elements/W~11", "elements/W~11/rows",
        "power", "", "/", "people", "elements/W~11/rows/near/R1/motors"}) {
    CAPTURE(path);
    CHECK(says(refused(path, "1"), "may be amended while a pour goes on"));
  }
  CHECK(says(refused("mixes/A", R"({"unit_weight":23,"slump":0.1,"initial_set_h":4})"),
             "is in the plan already"));
  CHECK(says(refused(kWall + "/rows/near/R1", kRow2), "is in the plan already"));
  CHECK(says(refused("elements/W9/thickness", "0.3"), "names W9, which is not in the plan"));
  CHECK(says(refused("people/x9/role", R"("foreman")"), "names x9, which is not in the plan"));
  CHECK(says(refused(kThick, "0.3"), "changes nothing of the plan"));
}

TEST_CASE("a bad value is refused by the plan's own reader, naming what and where") {
  CHECK(says(refused(kThick, "-0.2"), "the plan as amended"));
  CHECK(says(refused(kThick, "-0.2"), "field thickness: is -0.2"));
  CHECK(says(refused(kThick, R"("thick")"), "field thickness"));
  CHECK(says(refused(kWall + "/rows/near/R1/z", "9"), "field z: is 9"));
  CHECK(says(refused(kWall + "/rows/up/R2", kRow2), "near or far was expected"));
  CHECK(says(refused(kWall + "/rows/near/R2", R"({"z":0.9,"motors":[]})"), "at least one motor"));
  CHECK(says(refused("people/q1", R"("K. Lindqvist")"), "an object {...} was expected"));
  CHECK(says(refused("mixes/B", R"({"slump":0.1})"), "field unit_weight"));
}

TEST_CASE("the plan is another from the moment it is amended") {
  const std::string far = R"("do":"run","element":"W/1","side":"far","row":"R2")";
  const std::string added = amend(kWall + "/rows/far/R2", kRow2);
  CHECK(says(refused_line(line("10", far) + line("11", added)), "is not in the plan"));
  const PourState state = folded(line("10", added) + line("11", far));
  CHECK(state.runs.size() == 1);
  REQUIRE(state.amends.size() == 1);
  CHECK(state.amends[0].was.empty());
  CHECK(state.elements[0].rows.size() == 2);
  // Struck, the row was never there.
  const PourState struck = folded(line("10", R"("id":"a",)" + added) +
                                  line("12", R"("do":"strike","target":"a","why":"no")"));
  CHECK(*struck.plan == plan());
  CHECK(struck.elements[0].rows.size() == 1);
  CHECK(struck.amends.empty());
}

TEST_CASE("who comes to the plan late may sign from then on") {
  const std::string sign = R"("do":"sign","role":"inspector","verdict":"accepted")";
  CHECK(says(refused_line(line("20", sign)), "cannot sign as inspector"));
  const PourState state =
      folded(line("10", amend("people/f1/role", R"("foreman, inspector")")) + line("20", sign));
  CHECK(state.signs.size() == 1);
}

TEST_CASE("volumes go by the thickness as amended") {
  const std::string placed = line("10", R"("do":"lift-start","element":"W/1","lift":1)") +
                             line("30", R"("do":"lift-end","element":"W/1","lift":1,"height":0.6)");
  CHECK(in_cubic_metres(net_volume(folded(placed), 0)) == doctest::Approx(0.72));
  CHECK(in_cubic_metres(net_volume(folded(placed + line("31", amend(kThick, "0.35"))), 0)) ==
        doctest::Approx(0.84));
}

TEST_CASE("a row that has run is not moved: what it shook was shaken where it hung") {
  const std::string move = amend(kWall + "/rows/near/R1/z", "0.8");
  CHECK(folded(line("05", move) + line("06", kOpening)).plan->elements[0].rows[0].z == metres(0.8));
  CHECK(says(refused_line(line("06", kOpening) + line("07", move)), "row R1 has run"));
}

TEST_CASE("an amendment that cannot be leaves the plan as it was, and says why") {
  const auto event = [](const std::string& text) {
    const auto script = read_script(text, "x");
    REQUIRE(script);
    return script->events;
  };
  auto events = event(line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan) +
                      line("10", amend(kThick, "0.35")));
  std::get<event::Amend>(events[1].what).value = "-1";
  const auto state = fold(events);
  REQUIRE(state);
  CHECK(state->log[1].sense == LogEntry::Sense::wrong);
  CHECK(says(state->log[1].why_not.text(), "field thickness"));
  CHECK(*state->plan == plan());
}
