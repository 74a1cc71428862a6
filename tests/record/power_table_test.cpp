// What the record tells of inverters, cords and generators.
#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <iterator>

#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "record/model/daily_record.h"
#include "record/model/table.h"

using namespace rb;

namespace {

// The demo pour, with more of its inverters and a trip.
PourRecord told(const std::string& feed) {
  std::ifstream in{RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl"};
  std::string text{std::istreambuf_iterator<char>(in), {}};
  const std::string was = R"("cable": {"mm2": 4, "length": 25}})";
  for (auto at = text.find(was); at != std::string::npos; at = text.find(was, at + 1)) {
    text.insert(at + was.size() - 1, feed);
  }
  text += R"({"at":"2026-03-02T05:38:00.000Z","by":"mo","do":"trip","inverter":"I1"})"
          "\n";
  const auto script = read_script(text, "demo-pour.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const PourState state = *fold(script->events);
  const CheckReport report = check(state, AsOf::end(state));
  const DailyRecord record = make_daily_record(
      {{state, report, {}}}, *parse_moment("2026-03-02T00:00:00Z"), std::chrono::minutes{0}, {});
  REQUIRE(record.pours.size() == 1);
  return record.pours.front();
}

}  // namespace

TEST_CASE("the record tells the most that ran on each inverter, and what its cords lose") {
  const PourRecord pour = told("");
  REQUIRE(pour.power.size() == 2);
  const PowerLine& first = pour.power.front();
  CHECK(first.inverter == "I1");
  CHECK(first.motors == 8U);
  CHECK(in_amperes(*first.amps) == doctest::Approx(33.6));
  CHECK(in_amperes(first.gives) == doctest::Approx(40));
  CHECK(first.cords == "own cord 4 mm2, 25\u00A0m");
  // sqrt(3) x 4.2 A x 25 m x 5.94 ohm/km, a fortieth of 42 V.
  CHECK(*first.lost == doctest::Approx(0.0257).epsilon(0.005));
  CHECK_FALSE(first.trunk_amps);
  CHECK_FALSE(first.generator_takes);
}

TEST_CASE("the record tells trunk and generator, and that a derating is our own choice") {
  const PourRecord pour =
      told(R"(, "trunk": {"mm2": 16, "length": 10}, "generator": {"id": "G", "kva": 10})");
  const PowerLine& first = pour.power.front();
  CHECK(first.cords == "trunk 16 mm2, 10\u00A0m; own cord 4 mm2, 25\u00A0m");
  CHECK(in_amperes(*first.trunk_amps) == doctest::Approx(33.6));
  CHECK(first.generator == "G: 10 kVA x 0.8, our own choice");
  CHECK(in_kilovoltamperes(*first.generator_gives) == doctest::Approx(8));
  // R1 and R2 ran at once: sixteen motors of 4.2 A on both inverters.
  CHECK(in_kilovoltamperes(*first.generator_takes) ==
        doctest::Approx(std::sqrt(3.) * 42 * 67.2 / 1000));
  CHECK(pour.power.back().generator_takes == first.generator_takes);
}

TEST_CASE("settings and trips stand in the record in order of time, with who logged them") {
  const PourRecord pour = told("");
  REQUIRE(pour.settings.size() == 3);
  CHECK(pour.settings[0].inverter == "I1");
  CHECK(pour.settings[0].what == "set");
  CHECK(in_vibrations_per_minute(*pour.settings[0].speed) == doctest::Approx(6000));
  CHECK(in_volts(*pour.settings[0].volts) == doctest::Approx(42));
  CHECK(pour.settings[2].what == "tripped");
  CHECK(pour.settings[2].by == "Marek Oduya");
  CHECK_FALSE(pour.settings[2].speed);
}
