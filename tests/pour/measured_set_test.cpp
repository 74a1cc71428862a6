#include "pour/outlook/measured_set.h"
#include "pour/log/log_entry.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>

#include "pour/outlook/form.h"
#include "pour/outlook/form_pressure.h"
#include "story.h"
#include "trade/concrete/setting.h"

using namespace rb;

namespace {

const char* kOpenMeasured =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":24,"slump":0.12,"initial_set_h":5,"set_q_k":5000},)"
    R"({"id":"C2","unit_weight":24,"slump":0.12,"initial_set_h":6}],"limits":{"load_age_max_s":0,"temp_min":20},)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"form_rating_kpa":40,)"
    R"("lifts":[1,2,3]}]}})";

std::string penetration(double mpa, const char* more = "", const char* mixed = "05:00:00") {
  return fmt::format(R"("do":"penetration","mix":"C1","mixed":"2026-03-02T{}.000Z",)"
                     R"("resistance":{}{})",
                     mixed, mpa, more);
}

// Readings each half hour from 2 h on, on the line that reaches 3.5 MPa `hours` after mixing, each
// off it by a share in turn.
StoryLines& read(StoryLines& story, double hours, int readings, double off = 0.0,
                 const char* more = "", const char* mixed = "05:00:00") {
  for (int i = 0; i < readings; ++i) {
    const double after = 2.0 + 0.5 * i;
    const double mpa = 3.5 * std::pow(after / hours, 4.0) * (i % 2 == 0 ? 1 + off : 1 - off);
    const int minutes = static_cast<int>(after * 60);
    const std::string clock = fmt::format("{:02}:{:02}:00", 5 + minutes / 60, minutes % 60);
    story.at(clock.c_str(), penetration(mpa, more, mixed));
  }
  return story;
}

double set_hours(const PourState& state, double came_h = 0.5) {
  return in_hours(trade::sets_at(set_steps(state, 0), hours(came_h))) - came_h;
}

}  // namespace

TEST_CASE("a penetration reading is written and read back") {
  const std::string line =
      R"({"at":"2026-03-02T07:00:00.000Z","by":"f1","do":"penetration","mix":"C1",)"
      R"("mixed":"2026-03-02T05:00:00.000Z","resistance":1.25,"temp":18.5})";
  const auto event = parse_event(line, "test");
  REQUIRE_MESSAGE(event, (event ? std::string{} : to_text(event.error())));
  const auto& reading = std::get<event::Penetration>(event->what);
  CHECK(in_kilopascals(reading.resistance) == doctest::Approx(1250));
  CHECK(reading.temp == celsius(18.5));
  CHECK(*parse_event(to_line(*event), "again") == *event);
  for (const char* bad : {R"("resistance":0)", R"("resistance":101)", R"("mixed":"noon")",
                          R"("temp":99)", R"("mix":7)"}) {
    CAPTURE(bad);
    const auto set = with_fields(*event, std::string{"{"} + bad + "}", "a fix");
    REQUIRE_FALSE(set);
    const std::string field{bad + 1, std::string{bad}.find(':') - 2};
    CHECK(to_text(set.error()).find(field) != std::string::npos);
  }
}

TEST_CASE("a reading of an unknown mix, or from before it was mixed, is left out and says why") {
  StoryLines story{kOpenMeasured};
  story.at("07:00:00", penetration(1.0, "", "07:30:00"));
  auto folded = fold(story.events);
  CHECK(folded->log.back().sense == LogEntry::Sense::wrong);
  CHECK(folded->penetrations.empty());
  story.at("08:00:00", R"("do":"penetration","mix":"C9","mixed":"2026-03-02T05:00:00.000Z",)"
                       R"("resistance":1)");
  folded = fold(story.events);
  CHECK(folded->log.back().why_not.text().find("C9") != std::string::npos);
}

TEST_CASE("without readings enough the plan's set time stands") {
  StoryLines story{kOpenMeasured};
  CHECK(set_hours(story.state()) == doctest::Approx(5));
  read(story, 3.0, 5);
  CHECK_FALSE(measured_set(story.state(), story.state().plan->mixes[0]));
  CHECK(set_hours(story.state()) == doctest::Approx(5));
  CHECK_FALSE(set_measured(story.state(), 0, hours(1)));
}

TEST_CASE("readings on one line give their set time in place of the plan's, for their mix alone") {
  StoryLines story{kOpenMeasured};
  read(story, 4.0, 8);
  const PourState state = story.state();
  const auto set = measured_set(state, state.plan->mixes[0]);
  REQUIRE(set);
  CHECK(set->readings == 8);
  CHECK_FALSE(set->beyond_readings);
  CHECK(in_hours(set->early) == doctest::Approx(4));
  CHECK(in_hours(set->late) == doctest::Approx(4));
  CHECK(set_hours(state) == doctest::Approx(4));
  CHECK(set_measured(state, 0, hours(1)));
  CHECK_FALSE(measured_set(state, state.plan->mixes[1]));
}

TEST_CASE("readings that scatter count by the early side, and by the late one for waiting") {
  StoryLines story{kOpenMeasured};
  read(story, 4.0, 9, 0.08);
  const PourState state = story.state();
  const auto set = measured_set(state, state.plan->mixes[0]);
  REQUIRE(set);
  CHECK(in_hours(set->early) < 4.0);
  CHECK(in_hours(set->late) > 4.0);
  CHECK(set_hours(state) == doctest::Approx(in_hours(set->early)));
  CHECK(set_steps(state, 0, SetSide::late).front().to_set == set->late);
}

TEST_CASE("readings that do not agree are not used") {
  StoryLines story{kOpenMeasured};
  int minute = 0;
  for (const double mpa : {0.1, 0.11, 0.12, 2.0, 2.1, 9.0}) {
    story.at(fmt::format("07:{:02}:00", minute).c_str(), penetration(mpa));
    minute += 10;
  }
  CHECK_FALSE(measured_set(story.state(), story.state().plan->mixes[0]));
}

TEST_CASE("before a reading has passed the threshold the plan's time stays within the range") {
  StoryLines slow{kOpenMeasured};
  read(slow, 9.0, 7);  // 5 h: 0.33 MPa, the line reaches 3.5 MPa at 9 h
  auto set = measured_set(slow.state(), slow.state().plan->mixes[0]);
  REQUIRE(set);
  CHECK(set->beyond_readings);
  CHECK(in_hours(set->early) == doctest::Approx(5));
  CHECK(in_hours(set->late) == doctest::Approx(9));
  StoryLines fast{kOpenMeasured};
  read(fast, 4.8, 6);  // 4.5 h: 2.7 MPa, the line reaches 3.5 MPa at 4.8 h
  set = measured_set(fast.state(), fast.state().plan->mixes[0]);
  REQUIRE(set);
  CHECK(set->beyond_readings);
  CHECK(in_hours(set->early) == doctest::Approx(4.8));
}

TEST_CASE("a cold sample is brought to the concrete's own temperature") {
  StoryLines story{kOpenMeasured};
  read(story, 6.0, 10, 0.0, R"(,"temp":10)");
  const double factor = trade::rate_factor(celsius(10), {celsius(20), {}});
  CHECK(set_hours(story.state()) == doctest::Approx(6 * factor));
}

TEST_CASE("of several samples the earliest end counts, and the latest for waiting") {
  StoryLines story{kOpenMeasured};
  read(story, 4.0, 8);
  read(story, 4.0, 8, 0.0, "", "05:30:00");  // the same readings, half an hour younger
  const PourState state = story.state();
  const auto set = measured_set(state, state.plan->mixes[0]);
  REQUIRE(set);
  CHECK(set->samples == 2);
  CHECK(in_hours(set->late) == doctest::Approx(4));
  CHECK(in_hours(set->early) < 4.0);
}

TEST_CASE("a measured set time counts from when the load was batched") {
  StoryLines story{kOpenMeasured};
  story.at("05:40:00",
           R"("do":"truck","ticket":"1","mix":"C1","volume":3,)"
           R"("batched":"2026-03-02T05:10:00.000Z","arrived":"2026-03-02T05:35:00.000Z")");
  story.at("05:40:00", R"("do":"discharge","ticket":"1","ended":"2026-03-02T05:58:00.000Z")");
  // What came at 05:50 was batched at 05:10.
  CHECK(set_hours(story.state(), 5.0 / 6) == doctest::Approx(5 - 2.0 / 3));
  read(story, 4.0, 8);
  CHECK(set_hours(story.state(), 5.0 / 6) == doctest::Approx(4 - 2.0 / 3));
  const auto late = set_steps(story.state(), 0, SetSide::late);
  CHECK(in_hours(trade::sets_at(late, hours(5.0 / 6))) == doctest::Approx(4 + 1.0 / 6));
}
