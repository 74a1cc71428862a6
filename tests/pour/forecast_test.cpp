#include "pour/outlook/forecast.h"

#include <doctest/doctest.h>

#include "story.h"

using namespace rb;

namespace {

// Two bays of 3 m, four lifts of 0.6 m, a row for each pair of lifts.
const char* kOpen =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":24,"slump":0.12,"initial_set_h":5,"set_q_k":5000}],)"
    R"("limits":{"load_age_max_s":0},"elements":[{"id":"W1","length":6,"height":2.4,"thickness":0.3,"bays":[3,3],)"
    R"("lifts":[0.6,1.2,1.8,2.4],"rows":[)"
    R"({"id":"R1","z":0.5,"motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.8},)"
    R"({"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.8}],"serves":[1,2]},)"
    R"({"id":"R2","z":1.6,"motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.8},)"
    R"({"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.8}],"serves":[3,4]}]}]}})";

std::string lift_start(int lift) {
  return R"("do":"lift-start","element":"W1","lift":)" + std::to_string(lift);
}
std::string lift_end(int lift, double height) {
  return R"("do":"lift-end","element":"W1","lift":)" + std::to_string(lift) + R"(,"height":)" +
         std::to_string(height);
}
std::string top(double height) {
  return R"("do":"top","element":"W1","height":)" + std::to_string(height);
}
std::string top(double height, int bay) {
  return top(height) + R"(,"bay":)" + std::to_string(bay);
}
std::string row(const char* what, const char* id) {
  return std::string{R"("do":")"} + what + R"(","element":"W1","row":")" + id + R"(")";
}
const std::string kHang1 = row("hang", "R1") + R"(,"motors":["M1","M2"],"cables":true)";
const std::string kHang2 = row("hang", "R2") + R"(,"motors":["M1","M2"],"cables":true)";

double minutes(Seconds s) {
  return s.count() / 60;
}
Seconds clock(double minutes_after_five) {
  return seconds(minutes_after_five * 60);
}

}  // namespace

TEST_CASE("before anything is placed nothing is foretold, and the first row is what must hang") {
  const Forecast f = forecast(StoryLines{kOpen}.state(), 0, clock(1));
  CHECK(f.rise.why_not == NoForecast::no_lift);
  CHECK(f.next_top.why_not == NoForecast::no_lift);
  CHECK(f.finish.why_not == NoForecast::no_lift);
  CHECK(f.knit_due.why_not == NoForecast::no_lift);
  REQUIRE(f.move.rows.size() == 1);
  CHECK(f.move.rows[0] == 0);
  CHECK(f.move.lift == 1);
  CHECK(f.move.due.why_not == NoForecast::no_lift);
}

TEST_CASE("the start of a lift alone tells no rate; one reading more does, as a range") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1));
  const Forecast bare = forecast(story.state(), 0, clock(10));
  CHECK(bare.rise.why_not == NoForecast::few_readings);
  CHECK(bare.next_top.why_not == NoForecast::few_readings);
  story.at("05:15:00", top(0.3));
  const Forecast f = forecast(story.state(), 0, clock(15));
  REQUIRE(f.rise);
  CHECK(in_metres_per_hour(f.rise->likely) == doctest::Approx(1.2));
  CHECK(f.rise->low < f.rise->likely);
  CHECK(f.rise->high > f.rise->likely);
  REQUIRE(f.next_top);
  CHECK(*f.planned_top == metres(0.6));
  CHECK(minutes(f.next_top->likely) == doctest::Approx(30));
  CHECK(f.next_top->earliest < f.next_top->likely);
  REQUIRE(f.next_top->latest);
  CHECK(*f.next_top->latest > f.next_top->likely);
}

TEST_CASE("a bad reading moves neither the rise nor the next top") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1));
  story.at("05:04:00", top(0.08)).at("05:08:00", top(0.16)).at("05:12:00", top(0.54));
  story.at("05:16:00", top(0.32)).at("05:20:00", top(0.40));
  const Forecast f = forecast(story.state(), 0, clock(20));
  REQUIRE(f.rise);
  CHECK(in_metres_per_hour(f.rise->likely) == doctest::Approx(1.2));
  REQUIRE(f.next_top);
  CHECK(minutes(f.next_top->likely) == doctest::Approx(30));
}

TEST_CASE("a forecast widens as its last reading grows old") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1)).at("05:15:00", top(0.3));
  const PourState state = story.state();
  const Forecast fresh = forecast(state, 0, clock(15));
  const Forecast old = forecast(state, 0, clock(25));
  CHECK(*old.next_top->latest - old.next_top->earliest >
        *fresh.next_top->latest - fresh.next_top->earliest);
  CHECK(in_metres(old.top) == doctest::Approx(0.5));
  CHECK(old.next_top->earliest >= clock(25));
}

TEST_CASE("a lift filled bay after bay reaches its top when the last bay does") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1));
  story.at("05:10:00", top(0.4, 1)).at("05:15:00", top(0.6, 1));
  story.at("05:20:00", top(0.2, 2)).at("05:25:00", top(0.4, 2));
  const Forecast f = forecast(story.state(), 0, clock(25));
  CHECK(f.bay_rise[0].why_not == NoForecast::done);
  REQUIRE(f.next_top);
  // The second bay counts from the lift's start, so its rate is told too low, its end too late; the
  // range must hold the truth (05:30).
  CHECK(f.next_top->earliest <= clock(30));
  CHECK(*f.next_top->latest >= clock(30));
}

TEST_CASE("the next motors must hang when the top gets to the first lift they serve") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1)).at("05:30:00", lift_end(1, 0.6));
  story.at("05:31:00", row("run", "R1")).at("05:33:00", row("rest", "R1"));
  story.at("05:35:00", lift_start(2)).at("05:50:00", top(0.9));
  PourState state = story.state();
  Forecast f = forecast(state, 0, clock(50));
  REQUIRE(f.move.rows == std::vector<std::size_t>{1});
  CHECK(f.move.lift == 3);
  CHECK(f.move.height == metres(1.2));
  CHECK(f.move.idle.empty());  // R1 still works for lift 2
  REQUIRE(f.move.due);
  CHECK(minutes(f.move.due->likely) == doctest::Approx(65));
  CHECK(f.move.due->earliest < clock(65));

  story.at("06:05:00", lift_end(2, 1.2)).at("06:06:00", row("run", "R1"));
  story.at("06:08:00", row("rest", "R1")).at("06:10:00", lift_start(3));
  f = forecast(story.state(), 0, clock(75));
  CHECK(f.move.idle == std::vector<std::size_t>{0});
  REQUIRE(f.move.due);  // lift 3 has begun and its row does not hang
  CHECK(f.move.due->earliest == clock(75));
  CHECK(*f.move.due->latest == clock(75));

  story.at("06:16:00", kHang2);
  f = forecast(story.state(), 0, clock(76));
  CHECK(f.move.rows.empty());
  CHECK(f.move.due.why_not == NoForecast::done);
}

TEST_CASE("a row that has worked for the last lift it serves may come down before the lift ends") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(2)).at("05:20:00", row("run", "R1"));
  story.at("05:21:00", row("rest", "R1"));
  CHECK(forecast(story.state(), 0, clock(22)).move.idle.empty());
  story.at("05:22:00", row("run", "R1")).at("05:22:30", row("rest", "R1"));
  CHECK(forecast(story.state(), 0, clock(23)).move.idle == std::vector<std::size_t>{0});
}

TEST_CASE("nothing rises during a hold, and the hold is not taken for slow placing") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1)).at("05:10:00", top(0.2));
  story.at("05:10:00", R"("do":"hold","reason":"pump")");
  const Forecast held = forecast(story.state(), 0, clock(20));
  CHECK(held.rise.why_not == NoForecast::held);
  CHECK(held.finish.why_not == NoForecast::held);
  story.at("05:40:00", R"("do":"resume")").at("05:50:00", top(0.4));
  const Forecast f = forecast(story.state(), 0, clock(50));
  CHECK(in_metres_per_hour(f.rise->likely) == doctest::Approx(1.2));
  CHECK(minutes(f.next_top->likely) == doctest::Approx(60));
}

TEST_CASE("the finish counts the pauses between lifts once they have been seen") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1)).at("05:15:00", top(0.3));
  Forecast f = forecast(story.state(), 0, clock(15));
  REQUIRE(f.finish);
  CHECK(minutes(f.finish->likely) == doctest::Approx(120));  // 1.2 m/h straight on
  story.at("05:30:00", lift_end(1, 0.6)).at("06:00:00", lift_start(2)).at("06:30:00", top(1.2));
  f = forecast(story.state(), 0, clock(90));
  REQUIRE(f.finish);
  CHECK(minutes(f.finish->likely) == doctest::Approx(180));  // 1.2 m in 90 min
  CHECK(f.finish->earliest < clock(150.1));                  // at 1.2 m/h
  REQUIRE(f.finish->latest);
  CHECK(*f.finish->latest >= f.finish->likely);
}

TEST_CASE("a full element has nothing left, and a closed pour foretells nothing") {
  StoryLines story{kOpen};
  story.at("05:00:00", lift_start(1)).at("06:00:00", lift_end(1, 2.4));
  CHECK(forecast(story.state(), 0, clock(61)).finish.why_not == NoForecast::done);
  CHECK(forecast(story.state(), 0, clock(61)).knit_due.why_not == NoForecast::done);
  story.at("06:02:00", R"("do":"pour-close")");
  const Forecast f = forecast(story.state(), 0, clock(63));
  CHECK(f.rise.why_not == NoForecast::closed);
  CHECK(f.finish.why_not == NoForecast::closed);
  CHECK(f.move.due.why_not == NoForecast::closed);
}

TEST_CASE("a flat surface rises at no rate, and no time is foretold") {
  StoryLines story{kOpen};
  story.at("05:00:00", lift_start(1)).at("05:10:00", top(0.0)).at("05:20:00", top(0.0));
  const Forecast f = forecast(story.state(), 0, clock(20));
  CHECK(f.rise.why_not == NoForecast::not_rising);
  CHECK(f.next_top.why_not == NoForecast::not_rising);
}

TEST_CASE("a surface's clock starts when concrete first stood there and runs to its set") {
  StoryLines story{kOpen};
  story.at("05:00:00", lift_start(1)).at("05:30:00", lift_end(1, 0.6)).at("05:45:00", top(0.6));
  const auto clocks = knit_clocks(story.state(), 0, clock(60));
  REQUIRE(clocks.size() == 2);
  REQUIRE(clocks[0].surface);
  CHECK_FALSE(clocks[0].below);
  const Joint& joint = *clocks[0].surface;
  CHECK(joint.lift == 1);
  CHECK(joint.z == metres(0.6));
  CHECK(minutes(joint.came) == doctest::Approx(30));
  CHECK(minutes(joint.sets) == doctest::Approx(330));
  // 0.15 m under the surface concrete came a quarter of the lift earlier.
  CHECK(minutes(joint.early) == doctest::Approx(322.5));
  CHECK(joint.open());
  const Forecast f = forecast(story.state(), 0, clock(60));
  CHECK(f.knit_due->earliest == joint.early);
  CHECK(*f.knit_due->latest == joint.sets);
}

TEST_CASE("a joint is knitted once every spot of the bay has been worked since it was covered") {
  StoryLines story{kOpen};
  story.at("05:00:00", kHang1).at("05:00:00", lift_start(1)).at("05:30:00", lift_end(1, 0.6));
  story.at("05:31:00", row("run", "R1")).at("05:33:00", row("rest", "R1"));
  story.at("06:00:00", lift_start(2)).at("06:30:00", lift_end(2, 1.2));
  auto clocks = knit_clocks(story.state(), 0, clock(91));
  REQUIRE(clocks[1].below);
  CHECK(minutes(*clocks[1].below->covered) == doctest::Approx(60));
  CHECK_FALSE(clocks[1].below->knitted);
  CHECK(clocks[1].pending(clock(91))->z == metres(0.6));
  CHECK(clocks[1].pending(clock(400))->z == metres(1.2));  // too late for the one below
  story.at("06:32:00", row("run", "R1")).at("06:34:00", row("rest", "R1"));
  clocks = knit_clocks(story.state(), 0, clock(95));
  CHECK(minutes(*clocks[1].below->knitted) == doctest::Approx(92));
  CHECK(clocks[1].pending(clock(95))->z == metres(1.2));
}

TEST_CASE("a row with a motor missing knits only where motors hung") {
  StoryLines story{kOpen};
  story.at("05:00:00", row("hang", "R1") + R"(,"motors":["M1"],"cables":true)");
  story.at("05:00:00", lift_start(1)).at("05:30:00", lift_end(1, 0.6));
  story.at("06:00:00", lift_start(2)).at("06:30:00", lift_end(2, 1.2));
  story.at("06:32:00", row("run", "R1")).at("06:34:00", row("rest", "R1"));
  auto clocks = knit_clocks(story.state(), 0, clock(95));
  CHECK(clocks[0].below->knitted);
  CHECK_FALSE(clocks[1].below->knitted);
  story.at("06:40:00",
           R"("do":"insert","element":"W1","lift":2,"bay":2,"group":2,"spacing":0.28,"seconds":10,)"
           R"("depth_below":0.15)");
  clocks = knit_clocks(story.state(), 0, clock(101));
  CHECK(minutes(*clocks[1].below->knitted) == doctest::Approx(100));
}

TEST_CASE("warmer concrete behind sets the joint earlier than what came before it") {
  StoryLines story{kOpen};
  story.at("05:00:00", lift_start(1)).at("05:10:00", R"("do":"test","ticket":"1","temp":30)");
  story.at("05:29:00", R"("do":"test","ticket":"2","temp":20)").at("05:30:00", lift_end(1, 0.6));
  const Joint joint = *knit_clocks(story.state(), 0, clock(31))[0].surface;
  CHECK(minutes(joint.sets) == doctest::Approx(330));
  // Concrete 0.15 m under it came at 22.5 min, at 30 degC: 5 h / 1.7563.
  CHECK(minutes(joint.early) == doctest::Approx(22.5 + 300 / 1.7563).epsilon(1e-3));
}
