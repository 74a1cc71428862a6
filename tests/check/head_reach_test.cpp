// How far down a row makes concrete press as liquid: by the plan, else twice the reach of its
// motors; never below the base, nor below what has set by the late side of its time. The figures
// are reckoned by hand: unit weight x depth.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// A wall of 24 kN/m3 with a row at 2.3 m that reaches 0.75 m; the mix sets in 3 h at 20 degC.
PlanText wall_at_2_3(const std::string& more = "") {
  PlanText plan{.height = 4, .rows = {full_row("R1", 2.3, "[1]", "near", 0.75)}};
  plan.lifts = "[3]";
  plan.element = R"("form_rating_kpa":50)" + more;
  plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":3)" + kQ;
  return plan;
}

double head_of_run(const Checked& seen) {
  return in_kilopascals(seen.report.runs.at(0).head);
}

Checked runs_at(const PlanText& plan, double from, double to) {
  return Pour{plan}.placed(1, 0, 3600, 3).ran("R1", from, to).checked();
}

}  // namespace

TEST_CASE("without a word of the plan the concrete presses down to twice the motors' reach") {
  const Checked seen = runs_at(wall_at_2_3(), 3700, 3800);
  CHECK(head_of_run(seen) == about(24 * (3 - 0.8)));  // 52.8 kPa
  const Finding f = seen.only("head-high");
  CHECK(f.measured->si == about(52.8));
  CHECK(f.limit->si == about(50));
}

TEST_CASE("the plan's reach for pressure stands in its place") {
  const Checked seen = runs_at(wall_at_2_3(R"(,"reach_pressure_z":1.0)"), 3700, 3800);
  CHECK(head_of_run(seen) == about(24 * (3 - 1.3)));  // 40.8 kPa
  CHECK_FALSE(seen.has("head-high"));
}

TEST_CASE("each motor presses down by its own reach") {
  // Over bay 1 0.6 m of reach, over bay 2 0.3 m; bay 2 stands higher.
  PlanText plan{.height = 4, .rows = {row_text("R1", 1.5, {{"M1", 1, 1, 0.6}, {"M2", 3, 1, 0.3}})}};
  Pour pour{plan};
  pour.at(0, lift_start(1)).at(3600, lift_end(1, 1.5, 1)).at(3600, lift_end(1, 1.9, 2));
  CHECK(head_of_run(pour.ran("R1", 4000, 4100).checked()) ==
        about(24 * 1.2));  // 0.3 to 1.5, not 0.9 to 1.9
}

TEST_CASE("concrete past the late side of its set presses no longer") {
  // Two loads of 20 degC: the first, batched at 0, brings 1.5 m and sets at 10,800 s; the second
  // lies on it.
  PlanText plan = wall_at_2_3();
  plan.lifts = "[1.5,3]";
  plan.rows = {full_row("R1", 2.3, "[2]", "near", 0.75)};
  const auto runs = [&](double from, double to) {
    Pour pour{plan};
    pour.load("T1", 1.5, 0, 600, 2400).load("T2", 1.5, 9000, 9600, 10200);
    pour.at(700, R"("do":"test","ticket":"T1","temp":20)");
    pour.at(9700, R"("do":"test","ticket":"T2","temp":20)");
    pour.placed(1, 600, 2400, 1.5).placed(2, 9600, 10200, 3);
    return pour.ran("R1", from, to).checked();
  };
  CHECK(head_of_run(runs(10300, 10400)) == about(24 * (3 - 0.8)));
  CHECK(runs(10300, 10400).has("head-high"));
  CHECK(head_of_run(runs(10700, 10799)) == about(24 * (3 - 0.8)));
  CHECK(head_of_run(runs(10800, 10900)) == about(24 * (3 - 1.5)));  // 36.0 kPa
  CHECK_FALSE(runs(10800, 10900).has("head-high"));
}

TEST_CASE("a row left running until its concrete sets ran under the greatest head on the way") {
  // As above; while the row runs the first load sets and the head falls from 52.8 to 36 kPa.
  PlanText plan = wall_at_2_3();
  plan.lifts = "[1.5,3]";
  plan.rows = {full_row("R1", 2.3, "[2]", "near", 0.75)};
  Pour pour{plan};
  pour.load("T1", 1.5, 0, 600, 2400).load("T2", 1.5, 9000, 9600, 10200);
  pour.at(700, R"("do":"test","ticket":"T1","temp":20)");
  pour.at(9700, R"("do":"test","ticket":"T2","temp":20)");
  pour.placed(1, 600, 2400, 1.5).placed(2, 9600, 10200, 3).ran("R1", 10300, 12000);
  CHECK(head_of_run(pour.checked()) == about(24 * (3 - 0.8)));
  CHECK(pour.checked().has("head-high"));
}
