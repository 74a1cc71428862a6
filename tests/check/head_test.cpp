// head-high: full liquid from the highest top under a running row down to where it makes it press,
// as it stands when the run ends, against what the form bears. Here the plan says how far that is
// below the row: as far as the motors reach. head_reach_test.cpp has what holds where it does not.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// A form that bears 30 kPa: 1.25 m of 24 kN/m3.
PlanText bearing(const std::string& row, double rating = 30, double reach = 0.6) {
  PlanText plan{.height = 4, .rows = {row}};
  plan.element = fmt::format(R"("form_rating_kpa":{},"reach_pressure_z":{})", rating, reach);
  return plan;
}

Checked run_under(const PlanText& plan, double height) {
  return Pour{plan}.placed(1, 0, 3600, height).ran("R1", 4000, 4100).checked();
}

double head(const Checked& seen) {
  return in_kilopascals(seen.report.runs.at(0).head);
}

}  // namespace

TEST_CASE("a row runs under too much head above what the form bears, not at it") {
  struct Case {
    double z, reach, top;  // 1.25 m of concrete over the lower reach
  };
  for (const Case& c : {Case{0.9, 0.6, 1.55}, Case{1.3, 0.6, 1.95}, Case{1.5, 0.7, 2.05},
                        Case{0.7, 0.6, 1.35}, Case{2.1, 0.4, 2.95}}) {
    const PlanText plan = bearing(full_row("R1", c.z, "[1]", "near", c.reach), 30, c.reach);
    CAPTURE(c.z);
    CHECK_FALSE(run_under(plan, c.top - 0.01).has("head-high"));
    CHECK_FALSE(run_under(plan, c.top).has("head-high"));
    CHECK(head(run_under(plan, c.top)) == about(30));
    const Finding f = run_under(plan, c.top + 0.01).only("head-high");
    CHECK(f.severity == Severity::stop);
    CHECK(f.measured->si == about(30.24));
    CHECK(f.limit->si == about(30));
    CHECK(unit_of(f) == "kPa");
    CHECK(f.row == 0);
    CHECK(f.from == seconds(4000));
    CHECK(f.to == seconds(4100));
    CHECK(source_text(f.source, kTerminal).starts_with("plan: form_rating_kpa"));
  }
}

TEST_CASE("nothing below the element's base is part of the head") {
  // Reach would go down to -0.3 m.
  const PlanText plan = bearing(full_row("R1", 0.3));
  CHECK(head(run_under(plan, 1.25)) == about(30));
  CHECK_FALSE(run_under(plan, 1.25).has("head-high"));
  CHECK(run_under(plan, 1.26).has("head-high"));
}

TEST_CASE("the head is the one at the end of the run") {
  // The concrete rises 1 mm/s; lower reach 0.3 m.
  Pour pour{bearing(full_row("R1", 0.9))};
  pour.placed(1, 0, 1800, 1.8);
  CHECK(head(Pour{pour}.ran("R1", 1000, 1500).checked()) == about(1.2 * 24));
  CHECK_FALSE(Pour{pour}.ran("R1", 1000, 1500).checked().has("head-high"));
  CHECK(Pour{pour}.ran("R1", 1000, 1600).checked().only("head-high").measured->si ==
        about(1.3 * 24));
  // What comes after the run does not count.
  CHECK_FALSE(Pour{pour}.ran("R1", 800, 900).checked().has("head-high"));
}

TEST_CASE("a row with nothing above its lower reach has no head") {
  CHECK(head(run_under(bearing(full_row("R1", 2)), 1)) == about(0));
}

TEST_CASE("the highest bay under the row's motors counts, no other") {
  struct Case {
    double reach_x;
    bool high;
  };
  // A motor at 1 m; bay 2 begins at 2 m and stands at 1.8 m, bay 1 at 1 m.
  for (const Case& c : {Case{1, false}, Case{1.1, true}}) {
    Pour pour{bearing(row_text("R1", 0.3, {{"M1", 1, c.reach_x}}))};
    pour.at(0, lift_start(1)).at(3600, lift_end(1, 1, 1)).at(3600, lift_end(1, 1.8, 2));
    const Checked seen = pour.ran("R1", 4000, 4100).checked();
    CAPTURE(c.reach_x);
    CHECK(seen.has("head-high") == c.high);
    CHECK(head(seen) == about(24 * (c.high ? 1.8 : 1)));
  }
}

TEST_CASE("on a battered face the lower reach is higher and the head less") {
  for (const double batter : {30., -30.}) {
    PlanText plan = bearing(full_row("R1", 0.9));
    plan.element += fmt::format(R"(,"batter_deg":{})", batter);
    const double low = 0.9 - 0.6 * std::cos(std::numbers::pi / 6);
    CHECK(head(run_under(plan, 1.6)) == about(24 * (1.6 - low)));
    CHECK_FALSE(run_under(plan, 1.6).has("head-high"));  // on the plumb it would be
    CHECK(run_under(plan, 1.7).has("head-high"));
  }
}

TEST_CASE("a deck's form bears the deck's thickness") {
  PlanText plan{.kind = "deck", .length = 6, .height = 4, .thickness = 0.2, .bays = "[6]"};
  plan.lifts = "[0.2]";
  plan.rows = {row_text("R1", 0, {{"M1", 3, 3, 0.3}})};
  for (const auto& [rating, high] : {std::pair{4.7, true}, {4.8, false}, {5., false}}) {
    plan.element = fmt::format(R"("form_rating_kpa":{})", rating);
    const Checked seen = Pour{plan}.placed(1, 0, 600, 0.2).ran("R1", 700, 800).checked();
    const auto& tried = rating;
    CAPTURE(tried);
    CHECK(head(seen) == about(4.8));
    CHECK(seen.has("head-high") == high);
  }
}

TEST_CASE("a column's head is reckoned as a wall's") {
  PlanText plan = bearing(row_text("R1", 0.9, {{"M1", 0.25, 0.25}}));
  plan.kind = "column";
  plan.length = plan.thickness = 0.5;
  plan.bays = "[0.5]";
  CHECK_FALSE(run_under(plan, 1.55).has("head-high"));
  CHECK(run_under(plan, 1.56).has("head-high"));
}

TEST_CASE("of several mixes the heaviest counts, for it is not known where each stands") {
  PlanText plan = bearing(full_row("R1", 0.9));
  plan.mix += R"(},{"id":"B","unit_weight":26,"slump":0.12,"initial_set_h":5)";
  CHECK(head(run_under(plan, 1.3)) == about(26));
}

TEST_CASE("the full head counts whatever rise the pressure method allows") {
  PlanText plan = bearing(full_row("R1", 0.9), 40);
  plan.more = R"("pressure_method":"ciria108")";
  // Placed at 0.2 m/h in ten hours: no method finds 40 kPa there, the liquid head is 40.8.
  const Checked seen = Pour{plan}.placed(1, 0, 36000, 2).ran("R1", 36100, 36200).checked();
  CHECK_FALSE(seen.has("rise-fast"));
  CHECK(seen.only("head-high").measured->si == about(40.8));
}

TEST_CASE("a form without a rating is not judged, but its head is given") {
  PlanText plan = bearing(full_row("R1", 0.9));
  plan.element = R"("reach_pressure_z":0.6)";
  CHECK_FALSE(run_under(plan, 1.8).has("head-high"));
  CHECK(head(run_under(plan, 1.8)) == about(36));
}

TEST_CASE("each side's row has its own head") {
  PlanText plan = bearing(full_row("R1", 1.5));
  plan.rows.push_back(full_row("R1", 0.9, "[1]", "far"));
  Pour pour{plan};
  pour.placed(1, 0, 3600, 1.6).ran("R1", 4000, 4100).ran("R1", 4000, 4100, "far");
  const Finding f = pour.checked().only("head-high");
  CHECK(f.side == Side::far_side);
  CHECK(f.measured->si == about(31.2));
}

TEST_CASE("a running row is told of at once, by the head it has now") {
  Pour pour{bearing(full_row("R1", 0.9))};
  pour.at(0, lift_start(1)).at(1000, top(1.5)).at(1100, run("R1")).at(1200, top(1.6));
  CHECK_FALSE(pour.live(1150).has("head-high"));
  CHECK(pour.live(1200).only("head-high").measured->si == about(31.2));
}
