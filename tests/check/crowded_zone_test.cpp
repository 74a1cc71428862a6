// A congested zone is judged for itself only when the plan gives it a least dose of its own.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "check/say_finding.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"

using namespace rb;

namespace {

// A wall of 4 x 0.5 m, all of it shaken 100 s; the zone is 1 m wide at its left end.
PourState pour(const std::string& zone) {
  const std::string text = fmt::format(
      R"({{"at":"2026-03-02T06:00:00.000Z","by":"f","do":"pour-open","pour":"P","plan":{{"mixes":[{{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}}],"elements":[{{"id":"W","length":4,"height":1,"thickness":0.3,"bays":[2,2],"lifts":[0.5],"congested":[{{"x":0,"z":0,"w":1,"h":0.5{}}}],"rows":[{{"id":"R","z":0.25,"serves":[1],"motors":[{{"id":"M1","x":1,"reach_x":1,"reach_z":0.5}},{{"id":"M2","x":3,"reach_x":1,"reach_z":0.5}}]}}]}}]}}}}
{{"at":"2026-03-02T06:01:00.000Z","by":"f","do":"hang","element":"W","row":"R","motors":["M1","M2"],"cables":true}}
{{"at":"2026-03-02T06:02:00.000Z","by":"f","do":"lift-start","element":"W","lift":1}}
{{"at":"2026-03-02T06:20:00.000Z","by":"f","do":"lift-end","element":"W","lift":1,"height":0.5}}
{{"at":"2026-03-02T06:21:00.000Z","by":"f","do":"run","element":"W","row":"R"}}
{{"at":"2026-03-02T06:22:40.000Z","by":"f","do":"rest","element":"W","row":"R"}}
)",
      zone);
  const auto script = read_script(text, "zone");
  REQUIRE_MESSAGE(script, to_text(script.error()));
  return *fold(script->events);
}

std::vector<Finding> low(const PourState& state) {
  std::vector<Finding> found;
  for (const Finding& f : check(state, AsOf::end(state)).findings) {
    if (f.rule == "dose-low") found.push_back(f);
  }
  return found;
}

}  // namespace

TEST_CASE("100 s over the whole wall is enough where the zone asks for nothing more") {
  CHECK(low(pour("")).empty());
  CHECK(low(pour(R"(,"dose_min_s":100)")).empty());
}

TEST_CASE("a zone that asks for 150 s is found wanting, it alone") {
  const PourState state = pour(R"(,"dose_min_s":150)");
  const auto found = low(state);
  REQUIRE(found.size() == 1);
  CHECK(found[0].lift == 1);
  CHECK(found[0].bay == 0);
  CHECK(found[0].measured->si == doctest::Approx(1));  // all of it
  CHECK(source_text(found[0].source, kTerminal) == "plan: dose_min_s of the congested zone");
  CHECK(sentence(found[0], *state.plan, kTerminal).find("its own 150 s") != std::string::npos);
  CHECK(state.plan->elements[0].congested[0].dose_min == seconds(150));
}

TEST_CASE("a zone's dose is written back as it was read") {
  const PourState state = pour(R"(,"dose_min_s":150)");
  const std::string line = to_line(state.log.front().event);
  CHECK(line.find(R"("dose_min_s":150)") != std::string::npos);
}
