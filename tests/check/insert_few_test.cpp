// insert-few: what is consolidated by insertions alone, judged by their work.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// 0.9 x 0.9 x 4.5 m in one lift of 20 minutes. Group 3 of ACI 309R: mean radius of action 0.270 m,
// spacing 0.405 m, 5 points a layer, 8 layers of 0.6 m: 40 points.
PlanText column() {
  PlanText plan{.kind = "column",
                .length = 0.9,
                .height = 4.5,
                .thickness = 0.9,
                .bays = "[0.9]",
                .lifts = "[4.5]"};
  plan.rows = {};
  return plan;
}

std::string work(double spacing, double each, const std::string& more = "") {
  return fmt::format(R"("do":"insert","element":"W1","lift":1,"group":3,"spacing":{},"seconds":{},)"
                     R"("depth_below":0{})",
                     spacing, each, more);
}

}  // namespace

TEST_CASE("a column in one go with one insertion at its top tells wanted and logged") {
  const Checked seen = Pour{column()}.placed(1, 0, 1200, 4.5).at(1210, work(0.4, 10)).checked();
  const Finding f = seen.only("insert-few");
  CHECK(f.measured->si == doctest::Approx(1 - 0.75 / 4.5));  // 0.6 + 0.15 m of 4.5
  const std::string says = seen.says(f);
  CAPTURE(says);
  CHECK(says.find("83.4") != std::string::npos);
  CHECK(says.find("points wanted 40, layers 8, insertions logged 1") != std::string::npos);
}

TEST_CASE("layer by layer as it rises, close enough and long enough, insertions are enough") {
  const auto layers = [](double spacing, double each, double until = 1200) {
    Pour pour{column()};
    pour.placed(1, 0, 1200, 4.5);
    for (double at = 160; at <= until; at += 160) pour.at(at, work(spacing, each));
    return pour.at(1201, work(spacing, each)).checked();
  };
  CHECK_FALSE(layers(0.4, 10).has("insert-few"));
  CHECK(layers(0.41, 10).has("insert-few"));      // over 1.5 x 0.270 m
  CHECK(layers(0.4, 4.9).has("insert-few"));      // under 5 s
  CHECK(layers(0.4, 10, 800).has("insert-few"));  // nothing from 3.0 to 3.75 m
}

TEST_CASE("an insertion after the concrete has set does not count") {
  PlanText plan = column();
  plan.mix += kQ;
  plan.limits = kFresh;
  plan.lifts = "[0.6]";
  const auto at = [&](double when) {
    return Pour{plan}.placed(1, 0, 600, 0.6).at(when, work(0.4, 10)).checked();
  };
  // What came at 300 s, in the middle, sets 5 h later.
  CHECK_FALSE(at(18290).has("insert-few"));
  CHECK(at(18291).has("insert-few"));
}

TEST_CASE("points that were logged are held to those its layers want") {
  PlanText plan = column();
  plan.lifts = "[0.6]";
  const auto points = [&](int told) {
    return Pour{plan}
        .placed(1, 0, 600, 0.6)
        .at(610, work(0.4, 10, fmt::format(R"(,"points":{})", told)))
        .checked();
  };
  CHECK_FALSE(points(5).has("insert-few"));
  CHECK(points(4).only("insert-few").limit->si == 5.);
}
