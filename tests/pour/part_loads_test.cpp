// A load that goes into several elements, or back to the plant, in parts.
#include <doctest/doctest.h>

#include "pour/log/script.h"
#include "pour/outlook/loads.h"
#include "random_taps.h"

using namespace rb;

namespace {

using Lines = std::vector<std::pair<int, std::string>>;

// A script of lines at seconds after 05:00.
Result<Script> script_of(const Lines& lines) {
  const Moment start = *parse_moment("2026-03-02T05:00:00Z");
  std::string text;
  const auto add = [&](int seconds, const std::string& what) {
    text += R"({"at":")" + to_text(start + std::chrono::seconds{seconds}) + R"(","by":"f1",)" +
            what + "}\n";
  };
  std::string plan = kTwoElements;
  std::erase(plan, '\n');  // one line of the script
  add(0, R"("do":"pour-open","pour":"P","plan":)" + plan);
  for (const auto& [at, what] : lines) add(at, what);
  return read_script(text, "s");
}

PourState folded(const Lines& lines) {
  const auto script = script_of(lines);
  REQUIRE_MESSAGE(script, to_text(script.error()));
  auto state = fold(script->events);
  REQUIRE(state);
  return *std::move(state);
}

// What the last line is refused with; empty: it is not.
std::string refusal(const Lines& lines) {
  const auto script = script_of(lines);
  return script ? std::string{} : to_text(script.error());
}

const std::string kTruck =
    R"("do":"truck","ticket":"T","mix":"C","volume":6,"batched":"2026-03-02T04:40:00Z",)"
    R"("arrived":"2026-03-02T05:00:00Z")";

std::string into(const std::string& element, int ended, const std::string& more = {}) {
  std::string text = R"("do":"discharge","ticket":"T","element":")" + element + '"' + more;
  if (ended > 0) {
    text += R"(,"ended":")" +
            to_text(*parse_moment("2026-03-02T05:00:00Z") + std::chrono::seconds{ended}) + '"';
  }
  return text;
}

LogEntry::Sense sense(const PourState& state) {
  return state.log.back().sense;
}

}  // namespace

TEST_CASE("a load goes into two elements, each from its own moment") {
  const PourState state = folded({{1, kTruck}, {60, into("W", 600)}, {700, into("K", 1000)}});
  REQUIRE(state.trucks.size() == 1);
  const TruckState& truck = state.trucks.front();
  REQUIRE(truck.parts.size() == 2);
  CHECK(truck.may_be_in(0));
  CHECK(truck.may_be_in(1));
  CHECK(*truck.discharged() == seconds(60));
  CHECK(*truck.ended() == seconds(1000));
  CHECK(load_spans(state, 0) == std::vector<LoadSpan>{{seconds(60), seconds(600), 0}});
  CHECK(load_spans(state, 1) == std::vector<LoadSpan>{{seconds(700), seconds(1000), 0}});
}

TEST_CASE("the end tapped later ends the part it names") {
  const PourState state = folded({{1, kTruck},
                                  {60, into("W", 0)},
                                  {600, into("W", 600)},
                                  {700, into("K", 0)},
                                  {900, into("K", 900, R"(,"volume":2)")}});
  const TruckState& truck = state.trucks.front();
  REQUIRE(truck.parts.size() == 2);
  CHECK(*truck.parts[0].to == seconds(600));
  CHECK(*truck.parts[1].to == seconds(900));
  CHECK(in_cubic_metres(*truck.parts[1].volume) == doctest::Approx(2));
  CHECK_FALSE(truck.left());  // the first part told no volume
  CHECK(in_cubic_metres(truck.placed()) == doctest::Approx(6));
}

TEST_CASE("a part by volume leaves the rest, and no more than the rest") {
  Lines lines{{1, kTruck}, {60, into("W", 600, R"(,"volume":2.5)")}};
  CHECK(in_cubic_metres(*folded(lines).trucks.front().left()) == doctest::Approx(3.5));
  lines.emplace_back(700, into("W", 900, R"(,"volume":3.5)"));
  CHECK(sense(folded(lines)) == LogEntry::Sense::counts);
  CHECK(*folded(lines).trucks.front().left() == Volume{});
  // The second tap says nothing new, a volume that was never in it is wrong.
  lines.emplace_back(1000, into("W", 1100));
  CHECK(sense(folded(lines)) == LogEntry::Sense::repeats);
  lines.back().second = into("W", 1100, R"(,"volume":0.5)");
  CHECK(refusal(lines) == "s line 5 (discharge): ticket T holds 6 m3: 6.5 m3 are too much.");
}

TEST_CASE("what went back to the plant was never placed") {
  std::string truck = kTruck;
  truck += R"(,"returned":1.5)";
  const PourState state = folded({{1, truck}, {60, into("W", 600)}});
  CHECK(in_cubic_metres(state.trucks.front().placed()) == doctest::Approx(4.5));
  truck.replace(truck.find("1.5"), 3, "6.5");
  CHECK(refusal({{1, truck}}) ==
        "s line 2 (truck): more came back (6.5 m3) than ticket T brought (6 m3).");
}

TEST_CASE("a discharge taken back leaves the part before it") {
  Lines lines{{1, kTruck}, {60, into("W", 600)}, {700, into("K", 1000) + R"(,"id":"k")"}};
  const PourState before = folded({lines[0], lines[1]});
  lines.emplace_back(1100, R"("do":"strike","target":"k","why":"not there")");
  const PourState after = folded(lines);
  CHECK(after.trucks == before.trucks);
}
