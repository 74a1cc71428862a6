#include "pour/outlook/form_pressure.h"

#include <doctest/doctest.h>

#include "pour/outlook/form.h"
#include "story.h"

using namespace rb;

namespace {

std::string open_with(const char* more, const char* mix = R"("slump":0.12,"temp_low":20)") {
  return std::string{
             R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
             R"("mixes":[{"id":"C1","unit_weight":25,"initial_set_h":5,)"} +
         mix +
         R"(}],"limits":{"rise_window_s":600},"elements":[{"id":"W1","length":6,"height":4,)"
         R"("thickness":0.3,"bays":[3,3],"reach_pressure_z":0.5,)" +
         more +
         R"("rows":[{"id":"R1","z":0.7,"motors":[{"id":"M1","x":1.5,"reach_x":1.4,"reach_z":0.5}],)"
         R"("serves":[1]}]}]}})";
}

const std::string kStart = R"("do":"lift-start","element":"W1","lift":1)";
std::string top(double height) {
  return R"("do":"top","element":"W1","height":)" + std::to_string(height);
}
const std::string kRunRow = R"("do":"run","element":"W1","row":"R1")";
const std::string kRestRow = R"("do":"rest","element":"W1","row":"R1")";

Seconds clock(double minutes_after_five) {
  return seconds(minutes_after_five * 60);
}

// 3 m in 2 h, the row runs from 06:00 to 06:02 and again at the end.
StoryLines stands(const std::string& open) {
  StoryLines story{open};
  story.at("05:00:00", kStart).at("06:00:00", top(1.5)).at("06:00:00", kRunRow);
  story.at("06:02:00", kRestRow).at("07:00:00", top(3.0));
  return story;
}

}  // namespace

TEST_CASE("the method is asked with the fastest rise so far") {
  StoryLines story{open_with("")};
  story.at("05:00:00", kStart).at("05:20:00", top(1.0)).at("06:20:00", top(1.2));
  const PourState state = story.state();
  const auto now = form_pressure(state, 0, 0, clock(80));
  REQUIRE(now);
  CHECK(in_metres_per_hour(now->rise) == doctest::Approx(3.0));
  const auto early = form_pressure(state, 0, 0, clock(5));
  CHECK(in_metres_per_hour(early->rise) == doctest::Approx(1.5));  // half the window was empty
}

TEST_CASE("the envelope is the method's, and liquid down to the reach of a running row") {
  const PourState state = stands(open_with("")).state();
  const auto running = form_pressure(state, 0, 0, clock(61));
  REQUIRE(running);
  REQUIRE(running->method);
  CHECK(running->rows == std::vector<std::size_t>{0});
  const Length standing = running->top;
  CHECK(in_kilopascals(running->profile.at(metres(0.2))) ==
        doctest::Approx(25 * in_metres(standing - metres(0.2))));
  const auto beside = form_pressure(state, 0, 1, clock(61));
  CHECK(beside->rows.empty());  // its motor reaches 2.9 m, the second bay begins at 3 m
  const auto rested = form_pressure(state, 0, 0, clock(90));
  CHECK(rested->rows.empty());
}

TEST_CASE("the worst moment of a pour is the run under the highest head") {
  StoryLines story = stands(open_with(R"("form_rating_kpa":60,)"));
  story.at("07:05:00", kRunRow).at("07:07:00", kRestRow).at("07:30:00", top(3.0));
  const auto worst = worst_pressure(story.state(), 0, clock(150));
  REQUIRE(worst);
  CHECK(in_kilopascals(worst->greatest.pressure) == doctest::Approx(25 * 2.8));
  CHECK(in_metres(worst->greatest.z) == doctest::Approx(0.2));
  CHECK(worst->bay == 0);
  CHECK(worst->row == 0);
  CHECK(worst->at >= clock(125));
  CHECK(worst->at <= clock(127));
  CHECK(in_kilopascals(*worst->margin()) == doctest::Approx(60 - 70));
}

TEST_CASE("where the method does not hold it says so and the whole head counts") {
  const PourState state = stands(open_with("", R"("slump":0.2)")).state();
  const auto now = form_pressure(state, 0, 1, clock(120));
  CHECK_FALSE(now->method);
  REQUIRE(now->no_method);
  CHECK(now->no_method->kind == Error::Kind::refused);
  CHECK(now->no_method->what.text().find("slump") != std::string::npos);
  const auto worst = worst_pressure(state, 0, clock(120));
  CHECK(in_kilopascals(worst->greatest.pressure) == doctest::Approx(75));
  CHECK(worst->greatest.why == trade::PressureFrom::liquid);
  CHECK(worst->no_method);
  CHECK_FALSE(worst->margin());
}

TEST_CASE("a colder test raises the method's pressure from then on") {
  StoryLines story{open_with("")};
  story.at("05:00:00", kStart).at("06:00:00", top(3.0));
  const double before =
      in_kilopascals(worst_pressure(story.state(), 0, clock(60))->greatest.pressure);
  story.at("06:10:00", R"("do":"test","ticket":"1","temp":5)").at("06:20:00", top(3.1));
  const auto after = worst_pressure(story.state(), 0, clock(80));
  CHECK(in_kilopascals(after->greatest.pressure) > before);
}

TEST_CASE("no moment between the turning points is worse than the worst found") {
  // A restless pour: bays apart, jumps, runs that overlap, loads and temperatures that change.
  StoryLines story{open_with(R"("form_rating_kpa":40,)")};
  story.at("05:00:00", kStart).at("05:07:00", top(0.4) + R"(,"bay":1)");
  story.at("05:11:30", R"("do":"test","ticket":"1","temp":12)").at("05:16:00", top(0.9));
  story.at("05:18:00", kRunRow).at("05:21:00", top(1.3) + R"(,"bay":2)").at("05:24:00", kRestRow);
  story.at("05:26:00", R"("do":"test","ticket":"1","temp":25)").at("05:29:00", top(1.5));
  story.at("05:29:00", top(1.7) + R"(,"bay":1)").at("05:41:00", kRunRow).at("05:49:00", top(2.1));
  story.at("05:52:00", kRestRow).at("06:20:00", top(2.6) + R"(,"bay":2)").at("06:40:00", top(3.0));
  const PourState state = story.state();
  for (const double until : {10.0, 22.0, 40.0, 51.0, 70.0, 110.0}) {
    const auto worst = worst_pressure(state, 0, clock(until));
    REQUIRE(worst);
    Pressure most;
    for (double t = 0.05; t <= until; t += 0.05) {
      for (const std::size_t bay : {0U, 1U}) {
        most = std::max(most, form_pressure(state, 0, bay, clock(t))->profile.greatest().pressure);
      }
    }
    CAPTURE(until);
    CHECK(in_kilopascals(most) <= in_kilopascals(worst->greatest.pressure) + 1e-9);
    CHECK(in_kilopascals(most) >= in_kilopascals(worst->greatest.pressure) - 0.35);
    const auto there = form_pressure(state, 0, worst->bay, worst->at);
    CHECK(there->profile.greatest().pressure <= worst->greatest.pressure);
  }
}

TEST_CASE("a deck bears no lateral pressure") {
  StoryLines story{
      R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
      R"("mixes":[{"id":"C1","unit_weight":25,"slump":0.12,"initial_set_h":5,"temp_low":20}],)"
      R"("elements":[{"id":"D1","kind":"deck","length":6,"height":4,"thickness":0.3}]}})"};
  CHECK_FALSE(form_pressure(story.state(), 0, 0, clock(1)));
  CHECK_FALSE(worst_pressure(story.state(), 0, clock(1)));
}

TEST_CASE("a row waits until what the form does not bear has set, or is told never") {
  const PourState state = stands(open_with(R"("form_rating_kpa":60,)")).state();
  // 60 kPa bear 2.4 m: concrete up to 0.6 m must set; it came at 05:24 and sets at 10:24.
  const auto wait = wait_before_running(state, 0, 0, clock(120));
  REQUIRE(wait);
  CHECK(in_hours(*wait) == doctest::Approx(10.4 - 7));
  // 40 kPa bear 1.6 m: by when 1.4 m has set nothing up to 1.2 m, the row's reach, is plastic.
  const PourState weak = stands(open_with(R"("form_rating_kpa":40,)")).state();
  CHECK_FALSE(wait_before_running(weak, 0, 0, clock(120)));
  CHECK(wait_before_running(stands(open_with("")).state(), 0, 0, clock(120)) == Seconds{});
}
