// The clock of setting: from when a load was batched, by its own temperature, on two sides.
// Figures: the equivalent age of ASTM C1074 (form second hand) worked out apart from the program.
#include "pour/outlook/set_clock.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "story.h"

using namespace rb;

namespace {

std::string opened(const char* mix) {
  return fmt::format(
      R"({{"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{{)"
      R"("mixes":[{{"id":"C1","unit_weight":24,"slump":0.12,{}}}],)"
      R"("elements":[{{"id":"W1","length":6,"height":3,"thickness":0.3,"lifts":[1,2,3]}}]}}}})",
      mix);
}

// A load of C1 batched, and discharged from one moment to another.
StoryLines& load(StoryLines& story, const char* ticket, const char* batched, const char* from,
                 const char* to) {
  story.at(from, fmt::format(R"("do":"truck","ticket":"{0}","mix":"C1","volume":3,)"
                             R"("batched":"2026-03-02T{1}.000Z","arrived":"2026-03-02T{2}.000Z")",
                             ticket, batched, from));
  story.at(from, fmt::format(R"("do":"discharge","ticket":"{}","element":"W1",)"
                             R"("ended":"2026-03-02T{}.000Z")",
                             ticket, to));
  return story;
}
StoryLines& test(StoryLines& story, const char* at, const char* ticket, double temp) {
  story.at(at, fmt::format(R"("do":"test","ticket":"{}","temp":{})", ticket, temp));
  return story;
}

// Seconds after 05:00, the pour's opening, at which what came then sets.
double sets(StoryLines& story, double came, SetSide side) {
  const PourState state = story.state();
  return in_seconds(trade::sets_at(set_steps(state, 0, side), seconds(came)));
}

constexpr SetSide kEarly = SetSide::early;
constexpr SetSide kLate = SetSide::late;
constexpr double kHour = 3600;

}  // namespace

TEST_CASE("a load batched 05:30 at 30 degC with 3 h at 20 degC sets by its Q, or by two sides") {
  // 3 h = 10800 s. Q 5000: rate 1.7553, 6152.9 s, 07:12:33. None: 6600 gives 2.1015, 5139.1 s,
  // 06:55:39; 4400 gives 1.6407, 6582.6 s, 07:19:43.
  StoryLines known{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  load(known, "1", "05:30:00", "06:00:00", "06:20:00");
  test(known, "06:05:00", "1", 30);
  for (const SetSide side : {kEarly, kLate}) {
    CHECK(sets(known, kHour + 600, side) == doctest::Approx(1800 + 6152.9).epsilon(1e-5));
  }
  StoryLines open{opened(R"("initial_set_h":3)").c_str()};
  load(open, "1", "05:30:00", "06:00:00", "06:20:00");
  test(open, "06:05:00", "1", 30);
  CHECK(sets(open, kHour + 600, kEarly) == doctest::Approx(1800 + 5139.1).epsilon(1e-5));
  CHECK(sets(open, kHour + 600, kLate) == doctest::Approx(1800 + 6582.6).epsilon(1e-5));
}

TEST_CASE("cold concrete sets by the slower Q early and by the quicker late") {
  // 5 h at 10 degC: 30583.4 s (4400), 39865.1 s (6600).
  const PourState state = StoryLines{opened(R"("initial_set_h":5)").c_str()}.state();
  const Mix& mix = state.plan->mixes.front();
  CHECK(in_seconds(planned_set(mix, celsius(10), kEarly)) ==
        doctest::Approx(30583.4).epsilon(1e-5));
  CHECK(in_seconds(planned_set(mix, celsius(10), kLate)) == doctest::Approx(39865.1).epsilon(1e-5));
}

TEST_CASE("a load of no ticket is as old as is allowed for what must be done, fresh for waiting") {
  StoryLines story{opened(R"("initial_set_h":5,"temp_low":20)").c_str()};
  CHECK(sets(story, kHour, kEarly) == doctest::Approx(kHour - 5400 + 18000));
  CHECK(sets(story, kHour, kLate) == doctest::Approx(kHour + 18000));
}

TEST_CASE("untested concrete is warm for what must be done and cold for waiting") {
  StoryLines story{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  story.at("05:00:00", R"("do":"air-temp","temp":30)");
  CHECK(sets(story, kHour, kEarly) == doctest::Approx(kHour - 5400 + 6152.9).epsilon(1e-5));
  // Least temperature of the plan's limits, 10 degC: rate exp(-5000 (1/283.15 - 1/293.15)).
  CHECK(sets(story, kHour, kLate) ==
        doctest::Approx(kHour + 10800 / std::exp(-5000 * (1 / 283.15 - 1 / 293.15))));
  StoryLines planned{
      opened(R"("initial_set_h":3,"set_q_k":5000,"temp_low":20,"temp_high":30)").c_str()};
  CHECK(sets(planned, kHour, kEarly) == doctest::Approx(kHour - 5400 + 6152.9).epsilon(1e-5));
  CHECK(sets(planned, kHour, kLate) == doctest::Approx(kHour + 10800));
}

TEST_CASE("a load's own tests count whenever made: the warmest early, the coldest late") {
  StoryLines story{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  load(story, "1", "05:30:00", "06:00:00", "06:20:00");
  test(story, "06:05:00", "1", 20);
  test(story, "08:00:00", "1", 30);
  test(story, "05:30:00", "9", 5);  // another's
  CHECK(sets(story, kHour + 600, kEarly) == doctest::Approx(1800 + 6152.9).epsilon(1e-5));
  CHECK(sets(story, kHour + 600, kLate) == doctest::Approx(1800 + 10800));
}

TEST_CASE("of two loads that come together the early side takes the first set, the late the last") {
  StoryLines story{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  load(story, "1", "05:10:00", "06:00:00", "06:20:00");
  load(story, "2", "05:50:00", "06:10:00", "06:30:00");
  test(story, "06:00:00", "1", 20);
  test(story, "06:10:00", "2", 20);
  CHECK(sets(story, kHour + 300, kLate) == doctest::Approx(600 + 10800));
  CHECK(sets(story, kHour + 900, kEarly) == doctest::Approx(600 + 10800));
  CHECK(sets(story, kHour + 900, kLate) == doctest::Approx(3000 + 10800));
  CHECK(sets(story, kHour + 1200, kEarly) == doctest::Approx(600 + 10800));  // its very end
  CHECK(sets(story, kHour + 1500, kEarly) == doctest::Approx(3000 + 10800));
}

TEST_CASE("after a load has ended what comes is its own, but no older than the oldest allowed") {
  StoryLines story{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  load(story, "1", "05:30:00", "06:00:00", "06:20:00");
  test(story, "06:05:00", "1", 20);
  // 90 min after it was batched it is taken no older: 07:00.
  CHECK(sets(story, 2 * kHour - 60, kEarly) == doctest::Approx(1800 + 10800));
  CHECK(sets(story, 3 * kHour, kEarly) == doctest::Approx(3 * kHour - 5400 + 10800));
  CHECK(sets(story, 3 * kHour, kLate) == doctest::Approx(3 * kHour + 10800));
}

TEST_CASE("a load whose end nobody told goes to the next, and no further than the oldest allowed") {
  StoryLines story{opened(R"("initial_set_h":3,"set_q_k":5000)").c_str()};
  const auto discharge = [&](const char* ticket, const char* batched, const char* from) {
    story.at(from, fmt::format(R"("do":"truck","ticket":"{0}","mix":"C1","volume":3,)"
                               R"("batched":"2026-03-02T{1}.000Z","arrived":"2026-03-02T{2}.000Z")",
                               ticket, batched, from));
    story.at(from, fmt::format(R"("do":"discharge","ticket":"{}","element":"W1")", ticket));
  };
  discharge("1", "05:30:00", "06:00:00");
  discharge("2", "06:00:00", "06:30:00");
  test(story, "06:00:00", "1", 20);
  CHECK(sets(story, kHour + 1200, kEarly) == doctest::Approx(1800 + 10800));
  CHECK(sets(story, kHour + 2400, kEarly) == doctest::Approx(3600 + 10800));
  CHECK(sets(story, 4 * kHour, kEarly) == doctest::Approx(4 * kHour - 5400 + 10800));
}

TEST_CASE("concrete that comes past its load's set has set as it comes") {
  StoryLines story{opened(R"("initial_set_h":0.5,"set_q_k":5000)").c_str()};
  load(story, "1", "05:10:00", "06:00:00", "06:20:00");
  CHECK(sets(story, kHour + 600, kEarly) == doctest::Approx(kHour + 600));
}
