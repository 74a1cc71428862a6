#include "pour/log/fold.h"

#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "story.h"

using namespace rb;

namespace {

const char* kOpen =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],)"
    R"("rows":[{"id":"R1","z":0.4,"motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.7},)"
    R"({"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.7}],"serves":[1]}]}]}})";

// A story of that wall, some of whose lines need not count.
struct Story : StoryLines {
  Story() : StoryLines(kOpen) {}
  [[nodiscard]] PourState state() const { return folded(); }
};

const std::string kStart1 = R"("do":"lift-start","element":"W1","lift":1)";
const std::string kRun = R"("do":"run","element":"W1","row":"R1","vpm":6000)";
const std::string kRest = R"("do":"rest","element":"W1","row":"R1")";

}  // namespace

TEST_CASE("the top of a bay runs straight between readings and stands between lifts") {
  Story story;
  story.at("05:00:00", kStart1)
      .at("05:10:00", R"("do":"top","element":"W1","height":0.2,"bay":1)")
      .at("05:20:00", R"("do":"lift-end","element":"W1","lift":1,"height":0.6)")
      .at("06:00:00", R"("do":"lift-start","element":"W1","lift":2)");
  const PourState state = story.state();
  const auto& left = state.elements[0].tops[0];
  const auto& right = state.elements[0].tops[1];
  CHECK(in_metres(left.at(seconds(300))) == doctest::Approx(0.1));
  CHECK(in_metres(left.at(seconds(900))) == doctest::Approx(0.4));
  CHECK(in_metres(right.at(seconds(600))) == doctest::Approx(0.3));
  CHECK(in_metres(left.at(seconds(3000))) == doctest::Approx(0.6));
  CHECK(in_seconds(*right.reached(metres(0.3))) == doctest::Approx(600));
  CHECK(state.elements[0].lifts[0].next_start == seconds(3600));
}

TEST_CASE("a lift topped twice keeps the higher top, and the lower reading is told") {
  Story story;
  story.at("05:00:00", kStart1)
      .at("05:10:00", R"("do":"top","element":"W1","height":0.5)")
      .at("05:20:00", R"("do":"top","element":"W1","height":0.4,"bay":2)");
  const PourState state = story.state();
  CHECK(state.elements[0].tops[1].standing() == metres(0.5));
  CHECK(state.readings.back().fell());
}

TEST_CASE("a second run of a running row and a rest of a resting one change nothing") {
  Story story;
  story.at("05:00:00", kRun).at("05:00:01", kRun).at("05:01:40", kRest).at("05:01:41", kRest);
  const PourState state = story.state();
  REQUIRE(state.runs.size() == 1);
  CHECK(*state.runs[0].to - state.runs[0].from == seconds(100));
  CHECK(state.log[2].sense == LogEntry::Sense::repeats);
  CHECK(state.log[4].sense == LogEntry::Sense::repeats);
}

TEST_CASE("taking down a row that runs ends its run, hung or not") {
  Story story;
  story.at("05:00:00", kRun);
  story.at("05:01:40", R"("do":"take-down","element":"W1","row":"R1")");
  const PourState state = story.state();
  CHECK(state.runs[0].to == seconds(100));
  CHECK(state.last == seconds(100));
  CHECK(state.log.back().sense == LogEntry::Sense::counts);
}

TEST_CASE("events entered out of order are folded in order of when they happened") {
  Story story, sorted;
  story.at("05:01:40", kRest).at("05:00:00", kRun);
  sorted.at("05:00:00", kRun).at("05:01:40", kRest);
  CHECK(story.state().runs[0].to == seconds(100));
  CHECK(story.state().runs.size() == sorted.state().runs.size());
}

TEST_CASE("a strike takes an event out, and striking the strike brings it back") {
  Story story;
  story.at("05:00:00", kRun).at("05:01:40", kRest);
  story.at("05:02:00", R"("do":"strike","target":"e2","why":"wrong row")");
  CHECK_FALSE(story.state().runs[0].to);
  story.at("05:03:00", R"("do":"strike","target":"e3","why":"it was right")");
  CHECK(story.state().runs[0].to == seconds(100));
}

TEST_CASE("a fix that makes no sense is left out and says why") {
  Story story;
  story.at("05:00:00", kStart1).at("05:10:00", R"("do":"top","element":"W1","height":0.5)");
  story.at("05:11:00", R"("do":"fix","target":"e2","set":{"height":-3},"why":"typo")");
  const PourState state = story.state();
  CHECK(state.elements[0].tops[0].standing() == metres(0.5));
  CHECK(state.log[3].sense == LogEntry::Sense::wrong);
  CHECK(state.log[3].why_not.text().find("height") != std::string::npos);
}

TEST_CASE("a fix that changes nothing is left out and says why") {
  for (const char* set : {"{}", R"({"hieght":0.6})", R"({"height":0.5})"}) {
    CAPTURE(set);
    Story story;
    story.at("05:00:00", kStart1).at("05:10:00", R"("do":"top","element":"W1","height":0.5)");
    story.at("05:11:00", R"("do":"fix","target":"e2","why":"typo","set":)" + std::string{set});
    const PourState state = story.state();
    CHECK(state.log[3].sense == LogEntry::Sense::wrong);
    CHECK(state.log[3].why_not.text().find("changes nothing") != std::string::npos);
    CHECK(state.corrections.empty());
  }
}

TEST_CASE(
    "the steady clock tells the length of a run tapped live across a step of the wall clock") {
  Story story;
  const auto entry = [](const char* wall, const char* mono) {
    return std::string{R"(,"entered":"2026-03-02T)"} + wall + R"(Z","mono":)" + mono +
           R"(,"boot":"b1")";
  };
  story.at("05:00:00", kRun + entry("05:00:00", "100"))
      .at("04:01:40", kRest + entry("04:01:40", "200"))  // set back by an hour in between
      .at("04:05:00", kRun + entry("04:05:00", "400"));
  const PourState state = story.state();
  REQUIRE(state.runs.size() == 2);
  CHECK(state.runs[0].to == seconds(100));
  CHECK(state.runs[1].from == seconds(300));
  REQUIRE(state.clock_steps.size() == 1);
  CHECK(state.clock_steps[0].step == seconds(-3600));
}

TEST_CASE("a spare motor takes the place of the one that is missing") {
  Story story;
  story
      .at("05:00:00", R"("do":"hang","element":"W1","row":"R1","motors":["M2","S9"],"cables":true)")
      .at("05:10:00", R"("do":"hang","element":"W1","row":"R1","motors":["M2"],"cables":false)");
  const PourState state = story.state();
  CHECK(state.hangs[0].places == std::vector<bool>{true, true});
  CHECK(state.hangs[1].places == std::vector<bool>{false, true});
  CHECK(state.hangs[0].to == seconds(600));
}

TEST_CASE("one event more gives the same state as folding all anew") {
  Story story;
  story.at("05:00:00", kStart1)
      .at("05:01:00", kRun)
      .at("05:02:00", kRest)
      .at("05:03:00", R"("do":"top","element":"W1","height":0.5)")
      .at("05:02:30", R"("do":"note","text":"late")")
      .at("05:04:00", R"("do":"fix","target":"e4","set":{"height":0.6},"why":"misread")")
      .at("05:05:00", R"("do":"strike","target":"e2","why":"not run")")
      .at("05:06:00", kRun);
  PourState grown = *fold(std::span{story.events}.first(1));
  for (std::size_t i = 1; i < story.events.size(); ++i) {
    extend(grown, story.events[i]);
    CHECK(grown == *fold(std::span{story.events}.first(i + 1)));
  }
}

TEST_CASE("what may not follow is refused before it is kept") {
  Story story;
  auto state = story.state();
  const auto event = parse_event(
      R"({"at":"2026-03-02T05:10:00Z","by":"f1","do":"top","element":"W1","height":9})", "tap");
  REQUIRE(event);
  const auto may = admissible(state, *event);
  REQUIRE_FALSE(may);
  CHECK(to_text(may.error()).find("above the form") != std::string::npos);
}
