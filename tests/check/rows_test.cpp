// run-short, run-long, row-missed: the seconds of a row for a lift, from the lift's start to the
// next one's; row-empty: a row run against an empty form; row-far: gaps wider than reach.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// An insertion everywhere: what is asked here is the row's work, not whether there was any.
Pour row_lift(const PlanText& plan = {}) {
  return Pour{plan}.placed(1, 0, 600, 0.6).at(620, insert(1));
}

// Moments whose seconds a binary fraction does not hold exactly.
const std::vector<double> kBegins{1000, 1000.1, 1234.567, 3333.333, 3601.1, 7201.9};

const std::string kFourRows = "[4]";

// A wall 4 m long with one row.
PlanText one_row(const std::vector<MotorText>& motors, double z = 0.3) {
  return {.bays = kFourRows, .rows = {row_text("R1", z, motors)}};
}

}  // namespace

TEST_CASE("a row runs short under 90 s, is missed at none, and is neither at 90 s") {
  for (const double begin : kBegins) {
    CAPTURE(begin);
    const Finding f = row_lift().ran("R1", begin, begin + 89.9).checked().only("run-short");
    CHECK(f.severity == Severity::mend);
    CHECK(f.measured->si == about(89.9));
    CHECK(f.limit->si == 90.);
    CHECK(unit_of(f) == "s");
    CHECK(f.lift == 1);
    CHECK(f.row == 0);
    CHECK(f.side == Side::near_side);
    CHECK(source_text(f.source, kTerminal).starts_with("default"));
    CHECK_FALSE(row_lift().ran("R1", begin, begin + 90).checked().has("run-short"));
    CHECK_FALSE(row_lift().ran("R1", begin, begin + 90.1).checked().has("run-short"));
  }
  const Checked missed = row_lift().checked();
  CHECK_FALSE(missed.has("run-short"));
  CHECK(missed.only("row-missed").measured->si == 0.);
  CHECK_FALSE(row_lift().ran("R1", 1000, 1000.1).checked().has("row-missed"));
}

TEST_CASE("a row runs long over 120 s, not at it") {
  for (const double begin : kBegins) {
    CAPTURE(begin);
    CHECK_FALSE(row_lift().ran("R1", begin, begin + 119.9).checked().has("run-long"));
    CHECK_FALSE(row_lift().ran("R1", begin, begin + 120).checked().has("run-long"));
    const Finding f = row_lift().ran("R1", begin, begin + 120.1).checked().only("run-long");
    CHECK(f.severity == Severity::note);
    CHECK(f.measured->si == about(120.1));
    CHECK(f.limit->si == 120.);
    CHECK(source_text(f.source, kTerminal).starts_with("default"));
  }
}

TEST_CASE("the band is the plan's where it names one, and the source says so") {
  const PlanText plan{.limits = R"("dose_min_s":60,"dose_max_s":80)"};
  const Finding brief = row_lift(plan).ran("R1", 1000, 1059).checked().only("run-short");
  CHECK(brief.limit->si == 60.);
  CHECK(source_text(brief.source, kTerminal) == "plan");
  CHECK_FALSE(row_lift(plan).ran("R1", 1000, 1060).checked().has("run-short"));
  CHECK_FALSE(row_lift(plan).ran("R1", 1000, 1080).checked().has("run-long"));
  const Finding drawn = row_lift(plan).ran("R1", 1000, 1081).checked().only("run-long");
  CHECK(drawn.limit->si == 80.);
  CHECK(source_text(drawn.source, kTerminal) == "plan");
  CHECK(source_text(row_lift(plan).checked().only("row-missed").source, kTerminal) == "plan");
}

TEST_CASE("runs of a row for a lift add up, also those while it is being placed") {
  CHECK_FALSE(row_lift().ran("R1", 550, 595).ran("R1", 700, 745).checked().has("run-short"));
  CHECK(
      row_lift().ran("R1", 550, 595).ran("R1", 700, 744).checked().only("run-short").measured->si ==
      about(89));
}

TEST_CASE("a run that goes on into the next lift is shared out between the two") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "[1,2]")};
  Pour pour = row_lift(plan).placed(2, 1000, 1600, 1.2).ran("R1", 950, 1130);
  const Checked seen = pour.checked();  // 50 s for lift 1, 130 s for lift 2
  CHECK(seen.only("run-short").measured->si == about(50));
  CHECK(seen.only("run-short").lift == 1);
  CHECK(seen.only("run-short").to == seconds(1000));
  CHECK(seen.only("run-long").measured->si == about(130));
  CHECK(seen.only("run-long").lift == 2);
}

TEST_CASE("two lifts served by one row are each given their band") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "[1,2]")};
  Pour pour = row_lift(plan).ran("R1", 700, 800).placed(2, 1000, 1600, 1.2).ran("R1", 1700, 1800);
  CHECK_FALSE(pour.checked().has("run-long"));
  CHECK_FALSE(pour.checked().has("run-short"));
}

TEST_CASE("a row that serves other lifts is not asked for") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "[2]")};
  CHECK_FALSE(row_lift(plan).checked().has("row-missed"));
  CHECK_FALSE(row_lift(plan).ran("R1", 700, 701).checked().has("run-short"));
  CHECK_FALSE(row_lift(plan).ran("R1", 700, 1000).checked().has("run-long"));
}

TEST_CASE("where the plan does not say which lifts a row serves, those it reaches into count") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "")};  // 0 to 1.2 m: lifts 1 and 2, and not the third
  Pour pour{plan};
  pour.placed(1, 0, 600, 0.6).placed(2, 1000, 1600, 1.2).placed(3, 2000, 2600, 1.8);
  for (const int lift : {1, 2, 3}) pour.at(2700, insert(lift));
  const auto missed = pour.checked().of("row-missed");
  REQUIRE(missed.size() == 2);
  CHECK(missed[0].lift == 1);
  CHECK(missed[1].lift == 2);
}

TEST_CASE("rows of the same name on two sides are told apart") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6), full_row("R1", 0.6, "[1]", "far")};
  const Checked seen = row_lift(plan).ran("R1", 700, 750).ran("R1", 700, 850, "far").checked();
  CHECK(seen.only("run-short").side == Side::near_side);
  CHECK(seen.only("run-long").side == Side::far_side);
}

TEST_CASE("a live look says nothing of rows that may still run, but of one running long at once") {
  Pour pour = row_lift().ran("R1", 700, 750);
  CHECK_FALSE(row_lift().live(900).has("row-missed"));
  CHECK_FALSE(pour.live(900).has("run-short"));
  pour.at(1000, lift_start(2));
  CHECK(pour.live(1000).has("run-short"));
  CHECK(row_lift().at(1000, lift_start(2)).live(1000).has("row-missed"));
  CHECK(row_lift().at(1000, kClose).live(1000).has("row-missed"));
  Pour running = row_lift().at(700, run("R1"));
  CHECK_FALSE(running.live(820).has("run-long"));
  CHECK(running.live(821).only("run-long").measured->si == about(121));
}

TEST_CASE(
    "a live look asks for the rows of the last planned lift a quarter of an hour after its end") {
  PlanText plan;
  plan.lifts = "[0.6]";
  plan.height = 0.6;
  Pour pour{plan};
  pour.placed(1, 0, 600, 0.6).at(620, insert(1));
  CHECK_FALSE(pour.live(1500).has("row-missed"));
  CHECK(pour.live(1501).has("row-missed"));
  PlanText more = plan;
  more.lifts = "[0.6,1.2]";
  more.height = 1.2;
  CHECK_FALSE(Pour{more}.placed(1, 0, 600, 0.6).live(9000).has("row-missed"));
}

TEST_CASE("a row runs empty when no concrete stands in its reach as it ends") {
  // It reaches 0.9 to 2.1 m.
  PlanText plan;
  plan.rows = {full_row("R1", 1.5)};
  for (const auto& [height, empty] : {std::pair{0.89, true}, {0.9, true}, {0.91, false}}) {
    Pour pour{plan};
    pour.placed(1, 0, 600, height).ran("R1", 700, 800);
    const auto& tried = height;
    CAPTURE(tried);
    CHECK(pour.checked().has("row-empty") == empty);
  }
  const Finding f = row_lift(plan).ran("R1", 700, 800).checked().only("row-empty");
  CHECK(f.severity == Severity::mend);
  CHECK(f.from == seconds(700));
  CHECK(f.to == seconds(800));
  CHECK_FALSE(f.measured);
  // Concrete that comes while it runs is concrete in reach.
  Pour pour{plan};
  pour.placed(1, 0, 600, 0.6).placed(2, 700, 1300, 1.2).ran("R1", 900, 1100);
  CHECK_FALSE(pour.checked().has("row-empty"));
}

TEST_CASE("a row run before any concrete came runs empty") {
  Pour pour{PlanText{}};
  pour.ran("R1", 10, 100).placed(1, 200, 800, 0.6);
  CHECK(pour.checked().has("row-empty"));
}

TEST_CASE("a row runs empty by the bays its motors reach") {
  PlanText plan;
  plan.rows = {row_text("R1", 0.3, {{"M1", 3, 1}})};  // bay 2 only
  Pour pour{plan};
  pour.at(0, lift_start(1)).at(600, top(0.6, 1)).ran("R1", 700, 800);
  CHECK(pour.checked().has("row-empty"));
  pour = Pour{plan};
  pour.at(0, lift_start(1)).at(600, top(0.6, 2)).ran("R1", 700, 800);
  CHECK_FALSE(pour.checked().has("row-empty"));
}

TEST_CASE("a row runs empty by the motors that hang on it") {
  // Concrete in bay 1; the motor over it is not hung.
  Pour pour;
  pour.at(0, lift_start(1)).at(600, top(0.6, 1)).ran("R1", 700, 800);
  CHECK_FALSE(pour.checked().has("row-empty"));
  pour.at(650, hang("R1", {"R1-2"}));
  CHECK(pour.checked().has("row-empty"));
  pour.at(660, hang("R1", {"R1-1"}));
  CHECK_FALSE(pour.checked().has("row-empty"));
  Pour right;  // the other way about: concrete in bay 2, under the one motor hung
  right.at(0, lift_start(1)).at(600, top(0.6, 2)).ran("R1", 700, 800);
  CHECK_FALSE(right.at(650, hang("R1", {"R1-2"})).checked().has("row-empty"));
}

TEST_CASE("what hangs on another row says nothing of this one") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6), full_row("R2", 0.6)};
  Pour pour{plan};
  pour.at(0, lift_start(1)).at(600, top(0.6, 1)).ran("R1", 700, 800);
  CHECK_FALSE(pour.at(650, hang("R2", {"R2-2"})).checked().has("row-empty"));
}

TEST_CASE("on a battered face a row's lower reach is higher") {
  // 1.5 - 0.6 cos 30 = 0.9804 m.
  PlanText plan;
  plan.rows = {full_row("R1", 1.5)};
  plan.element = R"("batter_deg":30)";
  for (const auto& [height, empty] : {std::pair{0.97, true}, {0.99, false}}) {
    const auto& tried = height;
    CAPTURE(tried);
    CHECK(Pour{plan}.placed(1, 0, 600, height).ran("R1", 700, 800).checked().has("row-empty") ==
          empty);
  }
}

TEST_CASE("a gap along a row is as wide as no motor reaches") {
  struct Case {
    std::vector<MotorText> motors;
    std::optional<double> gap;  // found when there is one
  };
  const std::vector<Case> cases{
      {{{"M1", 1, 1}, {"M2", 3, 1}}, std::nullopt},
      {{{"M1", 1, 1}, {"M2", 3.04, 1}}, std::nullopt},  // 40 mm in the middle
      {{{"M1", 1, 1}, {"M2", 3.06, 1}}, 0.06},          // 60 mm in the middle
      {{{"M1", 1, 1}, {"M2", 2.94, 1}}, 0.06},          // at the right end
      {{{"M1", 1.1, 1}, {"M2", 3, 1}}, 0.1},            // at the left end
      {{{"M1", 1, 1}}, 2.},                             // the right half
      {{{"M1", 2, 2}, {"M2", 1, 0.2}}, std::nullopt},   // one within another's reach
      {{{"M2", 3, 1}, {"M1", 1, 1}}, std::nullopt},     // in any order
      {{{"M1", 1, 0.5}, {"M2", 3, 0.4}}, 1.1},          // several: the widest
  };
  for (const Case& c : cases) {
    const Checked seen = row_lift(one_row(c.motors)).checked();
    CAPTURE(c.motors.size());
    CAPTURE(c.motors.back().x);
    REQUIRE(seen.has("row-far") == c.gap.has_value());
    if (!c.gap) continue;
    const Finding f = seen.only("row-far");
    CHECK(f.measured->si == about(*c.gap));
    CHECK(unit_of(f) == "m");
    CHECK(f.row == 0);
    CHECK(f.severity == Severity::mend);
  }
}

TEST_CASE("rows leave no gap over 50 mm up to the concrete's top") {
  struct Case {
    double low, high;  // two rows that reach 0.3 m
    double top;
    std::optional<double> gap;
  };
  for (const Case& c : {Case{0.3, 0.9, 1.2, std::nullopt}, Case{0.3, 0.94, 1.2, std::nullopt},
                        Case{0.3, 0.96, 1.2, 0.06}, Case{0.36, 0.9, 1.2, 0.06},
                        Case{0.3, 0.9, 1.24, std::nullopt}, Case{0.3, 0.9, 1.26, 0.06},
                        Case{0.3, 1.5, 0.6, std::nullopt},  // nothing stands in the gap yet
                        Case{0.3, 1.5, 0.7, 0.1}}) {
    PlanText plan;
    plan.rows = {full_row("R1", c.low, "[1]", "near", 0.3),
                 full_row("R2", c.high, "[1]", "near", 0.3)};
    const Checked seen = Pour{plan}.placed(1, 0, 3600, c.top).checked();
    CAPTURE(c.low);
    CAPTURE(c.high);
    CAPTURE(c.top);
    REQUIRE(seen.has("row-far") == c.gap.has_value());
    if (!c.gap) continue;
    CHECK(seen.only("row-far").measured->si == doctest::Approx(*c.gap));
    CHECK_FALSE(seen.only("row-far").row);
  }
}

TEST_CASE("on a battered face rows that just meet on the plumb leave a gap") {
  // Reach 0.3 cos 30 = 0.2598 m: 80 mm between the two, 40 mm under the lower and over the upper.
  PlanText plan;
  plan.rows = {full_row("R1", 0.3, "[1]", "near", 0.3), full_row("R2", 0.9, "[1]", "near", 0.3)};
  CHECK_FALSE(Pour{plan}.placed(1, 0, 3600, 1.2).checked().has("row-far"));
  plan.element = R"("batter_deg":30)";
  CHECK(Pour{plan}.placed(1, 0, 3600, 1.2).checked().only("row-far").measured->si ==
        doctest::Approx(0.6 - 0.6 * std::cos(std::numbers::pi / 6)));
}

TEST_CASE("no concrete, no gap") {
  const PlanText plan = one_row({{"M1", 1, 0.2}});
  CHECK_FALSE(Pour{plan}.at(10, lift_start(1)).checked().has("row-far"));
  CHECK_FALSE(row_lift({.rows = {}}).checked().has("row-far"));
}
