// joint-old, strip-early and heads-few: what the contract, the plan and the rate of placing want.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>

#include "pour/log/script.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

PlanText allowing(double joint_age) {
  PlanText plan;
  plan.element = fmt::format(R"("joint_age_max_s":{})", joint_age);
  return plan;
}

// Two bays as in the worked figure: 0.5 m up bay 1 had stood at 06:00, bay 2 comes there at 09:10.
Pour two_bays(const PlanText& plan) {
  return Pour{plan}
      .at(0, lift_start(1))
      .at(0, bay_start(1, 1))
      .at(3600, top(0.5, 1))
      .at(12000, bay_start(1, 2))
      .at(15000, top(0.5, 2));
}

}  // namespace

TEST_CASE("a joint is too old when the next concrete comes later than the contract allows") {
  const auto seen = [](double apart) {
    return Pour{allowing(2700)}.placed(1, 0, 600, 0.6).placed(2, 600 + apart, 1200 + apart, 1.2);
  };
  CHECK_FALSE(seen(2700).checked().has("joint-old"));
  const Checked old = seen(2701).checked();
  const Finding f = old.only("joint-old");
  CHECK(f.severity == Severity::mend);
  CHECK(f.lift == 1);
  CHECK(f.measured->si == about(2701));
  CHECK(f.limit->si == about(2700));
  CHECK(source_text(f.source, kTerminal) == "plan: joint_age_max_s");
  CHECK_FALSE(seen(2701)
                  .at(4000, R"("do":"joint","element":"W1","lift":1,"decision":"scabble")")
                  .checked()
                  .has("joint-old"));
  // While nothing comes it is told as it happens.
  Pour waiting = Pour{allowing(2700)}.placed(1, 0, 600, 0.6);
  CHECK_FALSE(waiting.live(3300).has("joint-old"));
  CHECK(waiting.live(3301).has("joint-old"));
}

TEST_CASE("bays of one lift are held to it, at the middle of what the later one gained") {
  // Bay 1 stood 0.25 m up at 1800 s, bay 2 came there at 13500: 11700 s.
  CHECK_FALSE(two_bays(allowing(11700)).checked().has("joint-old"));
  const Checked seen = two_bays(allowing(11699)).checked();
  const Finding f = seen.only("joint-old");
  CHECK(f.bay == 1);
  CHECK(f.measured->si == about(11700));
  CHECK(seen.says(f).find("after bay 1") != std::string::npos);
}

TEST_CASE("a form is not stripped before the plan allows, nor before its concrete has set") {
  const auto stripped = [](double at, const std::string& after) {
    PlanText plan;
    plan.element = after;
    plan.mix += kQ;
    return Pour{plan}
        .placed(1, 0, 600, 0.6)
        .at(at, R"("do":"strip","element":"W1","side":"near")")
        .checked();
  };
  const std::string day = R"("strip_after_s":57600)";
  CHECK(stripped(58199, day).only("strip-early").limit->si == about(57600));
  CHECK(stripped(58199, day).only("strip-early").measured->si == about(57599));
  CHECK_FALSE(stripped(58200, day).has("strip-early"));
  // 5 h at 20 degC of concrete untested, taken as cold as it may come, 10 degC: Q 5000 K gives
  // exp(-5000 (1/283.15 - 1/293.15)) = 0.547..., 32878 s after it came at 600 s.
  const Finding f = stripped(20000, "").only("strip-early");
  CHECK(f.severity == Severity::stop);
  CHECK(f.limit->si == doctest::Approx(18000 / std::exp(-5000 * (1 / 283.15 - 1 / 293.15))));
  CHECK_FALSE(stripped(600 + f.limit->si + 1, "").has("strip-early"));
}

TEST_CASE("a column placed in twenty minutes wants one vibrator of group 3, not half a one") {
  // 0.9 x 0.9 x 4.5 m in 20 min is 10.935 m3/h; group 3 compacts 4.6 to 15 m3/h: 1 to 3 heads.
  // In five minutes it is 43.74 m3/h: 3 to 10.
  const auto seen = [](double minutes, int heads) {
    PlanText plan{.kind = "column",
                  .length = 0.9,
                  .height = 4.5,
                  .thickness = 0.9,
                  .bays = "[0.9]",
                  .lifts = "[4.5]"};
    plan.rows = {};
    return Pour{plan}
        .placed(1, 0, 60 * minutes, 4.5)
        .at(60 * minutes + 5, insert(1, 0, 0.4, 0) + fmt::format(R"(,"heads":{})", heads))
        .checked();
  };
  CHECK_FALSE(seen(20, 1).has("heads-few"));
  CHECK_FALSE(seen(5, 3).has("heads-few"));
  const Checked few = seen(5, 2);
  const Finding f = few.only("heads-few");
  CHECK(f.measured->si == 2);
  CHECK(f.limit->si == 3);
  CHECK(few.says(f).find("3 to 10 keep up with it") != std::string::npos);
}

namespace {

// W1 stands 0.5 m up at 06:00, W2, which the plan has meet it, comes there at 09:10 (two hours and
// a half after that a load of W2 would be too old: no trucks are logged).
Pour two_elements(double contract = 86400) {
  PlanText plan;
  plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":3,"set_q_k":5000)";
  plan.limits = kFresh;
  plan.lifts = "[0.6]";
  plan.height = 0.6;
  plan.other = R"({"id":"W2","kind":"wall","length":2,"height":0.6,"thickness":0.25,"lifts":[0.6],)"
               R"("meets":["W1"],"joint_age_max_s":)" +
               fmt::format("{}}}", contract);
  const auto w2 = [](const std::string& what) {
    std::string line = what;
    line.replace(line.find("W1"), 2, "W2");
    return line;
  };
  return Pour{plan}
      .placed(1, 0, 3600, 0.6)
      .at(8000, w2(lift_start(1)))
      .at(14000, w2(top(0.6)))
      .at(14000, w2(lift_end(1, 0.6)));
}

}  // namespace

TEST_CASE("elements that meet are held to the set of the one that stood, at the worst height") {
  // Both rise evenly to 0.6 m, in 3600 s and, from 8000 s on, in 6000 s: at the top it came 10400 s
  // after, on concrete of 20 degC that sets in 10800 s; 8000 s at the foot.
  CHECK_FALSE(two_elements().checked().has("knit-late"));
  CHECK_FALSE(two_elements().live(7999).has("knit-near"));
  const Checked waits = two_elements().later(7000, 9000).live(10800 - 60);
  CHECK(waits.says(waits.only("knit-near")).find("its side to W2 sets in 60") != std::string::npos);
  Pour later = two_elements().later(7000, 401);
  const Checked seen = later.checked();
  const Finding f = seen.only("knit-late");
  CHECK(f.element == 1);
  CHECK(f.lift == 1);
  CHECK(f.measured->si == about(10801));
  CHECK(f.limit->si == about(10800));
  CHECK(seen.says(f).find("after W1 beside it") != std::string::npos);
  later.at(20000, R"("do":"joint","element":"W2","lift":1,"decision":"scabble")");
  CHECK_FALSE(later.checked().has("knit-late"));

  CHECK_FALSE(two_elements(10400).checked().has("joint-old"));
  const Checked aged = two_elements(10399).checked();
  const Finding old = aged.only("joint-old");
  CHECK(old.element == 1);
  CHECK(old.measured->si == about(10400));
  CHECK(aged.says(old).find("came 2 h 53 min after W1 beside it") != std::string::npos);
}

TEST_CASE("a side that concrete is still to come against warns before it sets, and is told after") {
  PlanText plan;
  plan.limits = kFresh;
  plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":3,"set_q_k":5000)";
  plan.lifts = "[0.6]";
  // Bay 1 rises from 0 to 600 s; its foot sets at 10800 s. Bay 2 comes when it comes.
  Pour pour{plan};
  pour.at(0, lift_start(1))
      .at(0, bay_start(1, 1))
      .at(600, top(0.6, 1))
      .at(600, lift_end(1, 0.6, 1));
  CHECK_FALSE(pour.live(10800 - 901).has("knit-near"));
  const Checked near = pour.live(10800 - 900);
  const Finding f = near.only("knit-near");
  CHECK(f.bay == 0);
  CHECK(f.measured->si == about(900));
  CHECK(near.says(f).find("its side to bay 2 sets in") != std::string::npos);
  CHECK_FALSE(near.has("knit-late"));
  const Checked late = pour.live(10800);
  CHECK_FALSE(late.has("knit-near"));
  CHECK(late.says(late.only("knit-late")).find("its side to bay 2 before it set") !=
        std::string::npos);
  // Bay 2 half way up: what it stands beside is no longer waited for.
  Pour half = pour;
  half.at(700, bay_start(1, 2)).at(1000, top(0.3, 2));
  CHECK_FALSE(half.live(11100 - 901).has("knit-near"));
  CHECK(half.live(11100 - 900).has("knit-near"));  // from 0.3 m up: it came 300 s in
  Pour ended = half;
  ended.at(1500, lift_end(1, 0.6, 2));
  CHECK_FALSE(ended.live(11099).has("knit-near"));
  Pour decided = pour;
  decided.at(9000, R"("do":"joint","element":"W1","lift":1,"bay":1,"decision":"scabble")");
  CHECK_FALSE(decided.live(10700).has("knit-near"));
}

TEST_CASE("an element that meets none of the plan is refused by its name") {
  PlanText plan;
  plan.element = R"("meets":["W9"])";
  const auto script = read_script(Pour{plan}.script(), "a.jsonl");
  REQUIRE_FALSE(script);
  CHECK(to_text(script.error()).find("W1 meets W9") != std::string::npos);
}

TEST_CASE("past its workability concrete is taken as set: what comes later does not count") {
  const auto pour = [](double share) {
    PlanText plan;
    plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":3,"set_q_k":5000)";
    plan.limits = kFresh + fmt::format(R"(,"plastic_share":{})", share);
    return Pour{plan}.at(60, hang("R1")).placed(1, 100, 110, 0.6).ran("R1", 5480, 5600);
  };
  // It came from 100 to 110 s on and is workable half of 10800 s.
  CHECK(in_seconds(*pour(1).checked().lift(1).min_dose) == about(120));
  const auto half = pour(0.5).checked().lift(1);
  CHECK(in_seconds(*half.min_dose) == about(20));   // at the foot: until 5500 s
  CHECK(in_seconds(*half.mean_dose) == about(25));  // at the top until 5510 s
}
