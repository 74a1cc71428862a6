// dose-low and dose-high: what a spot got from the moment its concrete came until it set, worked
// out by hand. Unless said otherwise a lift of 0.6 m is placed in 600 s: concrete comes to a height
// z at 1000 z seconds, and one row reaches all of it.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

constexpr double kPi = std::numbers::pi;

// Reach is taken a nanometre wide, so that its edge is within reach.
doctest::Approx near_enough(double v) {
  return doctest::Approx(v).epsilon(1e-7);
}

double least(const Checked& seen, int lift = 1) {
  return in_seconds(seen.lift(lift).min_dose.value());
}
double mean(const Checked& seen, int lift = 1) {
  return in_seconds(seen.lift(lift).mean_dose.value());
}
double under(const Checked& seen, int lift = 1) {
  return seen.lift(lift).under_share.value();
}

Pour one_lift(const PlanText& plan = {}) {
  return Pour{plan}.placed(1, 0, 600, 0.6);
}

// How much faster concrete sets than at 20 degC, Q = 5000 K.
double hurry(double degrees) {
  return std::exp(-5000 * (1 / (degrees + 273.15) - 1 / 293.15));
}

// One motor that reaches all but the last cells of 50 mm of a face 5 m long.
PlanText all_but(int cells) {
  const double half = (5 - 0.05 * cells) / 2;
  return {.length = 5, .bays = "[5]", .rows = {row_text("R1", 0.6, {{"M1", half, half}})}};
}

}  // namespace

TEST_CASE("90 s are enough, whatever moment they begin at; a tenth of a second less is not") {
  for (const double begin : {1000., 1000.1, 1234.567, 3601.1, 3333.333}) {
    CAPTURE(begin);
    CHECK(one_lift().ran("R1", begin, begin + 89.9).checked().has("dose-low"));
    CHECK_FALSE(one_lift().ran("R1", begin, begin + 90).checked().has("dose-low"));
    CHECK_FALSE(one_lift().ran("R1", begin, begin + 90.1).checked().has("dose-low"));
  }
}

TEST_CASE("the least dose is the plan's where it names one") {
  const PlanText plan{.limits = R"("dose_min_s":100)"};
  CHECK(one_lift(plan).ran("R1", 1000, 1099.9).checked().has("dose-low"));
  CHECK_FALSE(one_lift(plan).ran("R1", 1000, 1100).checked().has("dose-low"));
}

TEST_CASE("2 % of a lift may have less") {
  CHECK_FALSE(one_lift(all_but(1)).ran("R1", 1000, 1100).checked().has("dose-low"));
  CHECK_FALSE(one_lift(all_but(2)).ran("R1", 1000, 1100).checked().has("dose-low"));
  const Finding f = one_lift(all_but(3)).ran("R1", 1000, 1100).checked().only("dose-low");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si == near_enough(0.03));
  CHECK(f.limit->si == 0.02);
  CHECK(unit_of(f) == "1");
  CHECK(f.lift == 1);
  CHECK(f.side == Side::near_side);
  CHECK(f.from == seconds(0));
  CHECK(f.to == seconds(1100));
  CHECK(source_text(f.source, kTerminal).starts_with("default"));
}

TEST_CASE("the share that may have less is the plan's where it names one, and the source says so") {
  PlanText plan = all_but(3);
  plan.limits = R"("under_share_max":0.03)";
  CHECK_FALSE(one_lift(plan).ran("R1", 1000, 1100).checked().has("dose-low"));
  plan = all_but(4);
  plan.limits = R"("under_share_max":0.03)";
  const Finding f = one_lift(plan).ran("R1", 1000, 1100).checked().only("dose-low");
  CHECK(f.measured->si == near_enough(0.04));
  CHECK(f.limit->si == 0.03);
  CHECK(source_text(f.source, kTerminal) == "plan");
}

TEST_CASE("what comes while a row runs gets the rest of the run, exactly in height") {
  // 300 to 600 s: up to 0.3 m all 300 s; above, 600 - 1000 z: under 90 s from 0.51 m up.
  const Checked seen = one_lift().ran("R1", 300, 600).checked();
  CHECK(under(seen) == near_enough(0.09 / 0.6));
  CHECK(least(seen) == near_enough(0));
  CHECK(mean(seen) == near_enough((0.3 * 300 + 0.3 * 150) / 0.6));
  CHECK(seen.only("dose-low").measured->si == near_enough(0.15));
}

TEST_CASE("rows that reach the same spot count once while they run together") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6), full_row("R2", 0.3)};
  Pour pour = one_lift(plan);
  pour.ran("R1", 1000, 1060).ran("R2", 1030, 1090);
  CHECK(least(pour.checked()) == near_enough(90));
  CHECK_FALSE(pour.checked().has("dose-low"));
  pour = one_lift(plan).ran("R1", 1000, 1060).ran("R2", 1030, 1089);
  CHECK(least(pour.checked()) == near_enough(89));
  CHECK(pour.checked().has("dose-low"));
}

TEST_CASE("up to 0.3 m thick the best side counts, thicker the worst") {
  for (const auto& [thickness, dose] : {std::pair{0.25, 100.}, {0.3, 100.}, {0.301, 40.}}) {
    const auto& tried = thickness;
    CAPTURE(tried);
    PlanText plan{.thickness = thickness};
    plan.rows = {full_row("R1", 0.6), full_row("R1", 0.6, "[1]", "far")};
    const Checked seen =
        one_lift(plan).ran("R1", 1000, 1100).ran("R1", 1200, 1240, "far").checked();
    CHECK(least(seen) == near_enough(dose));
    CHECK(mean(seen) == near_enough(dose));
    CHECK(seen.has("dose-low") == (dose < 90));
    if (seen.has("dose-low")) CHECK_FALSE(seen.only("dose-low").side);  // both were judged
  }
}

TEST_CASE("the two sides are weighed spot by spot, not as a whole") {
  // The near side works on bay 1 alone, the far side on bay 2.
  PlanText plan;
  plan.rows = {row_text("R1", 0.6, {{"M1", 1}}), row_text("R1", 0.6, {{"M2", 3}}, "[1]", "far")};
  for (const auto& [thickness, share] : {std::pair{0.3, 0.}, {0.4, 1.}}) {
    plan.thickness = thickness;
    const Checked seen =
        one_lift(plan).ran("R1", 1000, 1100).ran("R1", 1000, 1100, "far").checked();
    const auto& tried = thickness;
    CAPTURE(tried);
    CHECK(under(seen) == near_enough(share));
  }
}

TEST_CASE("in a thick section with rows on one side only that side is judged") {
  const PlanText plan{.thickness = 0.5};
  CHECK(under(one_lift(plan).ran("R1", 1000, 1090).checked()) == near_enough(0));
}

TEST_CASE("a face without rows in the plan has no dose to be judged by") {
  const Checked seen = one_lift({.rows = {}}).checked();
  CHECK_FALSE(seen.lift(1).under_share);
  CHECK_FALSE(seen.lift(1).min_dose);
  CHECK_FALSE(seen.has("dose-low"));
}

TEST_CASE("openings hold no concrete and count nowhere") {
  PlanText plan{.openings = R"([{"x":3,"z":0,"w":1,"h":0.6}])"};
  plan.rows = {row_text("R1", 0.6, {{"M1", 1.5, 1.5}})};  // reaches 0 to 3 m
  CHECK(under(one_lift(plan).ran("R1", 1000, 1100).checked()) == near_enough(0));
  plan.openings = R"([{"x":1,"z":0.2,"w":1,"h":0.2}])";
  // 1 x 0.6 m of 4 x 0.6 - 1 x 0.2 m2.
  CHECK(under(one_lift(plan).ran("R1", 1000, 1100).checked()) == near_enough(0.6 / 2.2));
}

TEST_CASE("motors that were not hung shake nothing") {
  Pour pour = one_lift().ran("R1", 1000, 1100);
  CHECK(under(pour.checked()) == near_enough(0));  // never logged as hung: all of them count
  pour.at(900, hang("R1", {"R1-1"}));
  const Checked seen = pour.checked();
  CHECK(under(seen) == near_enough(0.5));
  CHECK(seen.only("dose-low").bay == 1);  // from 0: bay 2
}

TEST_CASE("a spare motor takes the place of the one that is missing") {
  CHECK(under(one_lift().at(900, hang("R1", {"R1-1", "S7"})).ran("R1", 1000, 1100).checked()) ==
        near_enough(0));
  // Alone it takes the leftmost place.
  const Checked seen = one_lift().at(900, hang("R1", {"S7"})).ran("R1", 1000, 1100).checked();
  CHECK(under(seen) == near_enough(0.5));
  CHECK(seen.only("dose-low").bay == 1);
}

TEST_CASE("a motor added half-way through a run counts from then on") {
  const Checked seen = one_lift()
                           .at(900, hang("R1", {"R1-1"}))
                           .at(1040, hang("R1", {"R1-1", "R1-2"}))
                           .ran("R1", 1000, 1100)
                           .checked();
  CHECK(least(seen) == near_enough(60));
  CHECK(mean(seen) == near_enough(80));
}

TEST_CASE("motors moved up during the pour count where they hang") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.3, "[1]", "near", 0.3), full_row("R2", 0.9, "[2]", "near", 0.3)};
  Pour pour{plan};
  pour.at(0, hang("R1", {"M1", "M2"})).placed(1, 0, 600, 0.6).ran("R1", 700, 800);
  pour.at(900, take_down("R1")).at(1000, hang("R2", {"M1"}));
  pour.placed(2, 1200, 1800, 1.2).ran("R2", 1900, 2000);
  const Checked seen = pour.checked();
  CHECK(under(seen, 1) == near_enough(0));
  CHECK(under(seen, 2) == near_enough(0.5));  // one of two motors was moved
  CHECK(seen.only("dose-low").lift == 2);
  CHECK(seen.only("dose-low").bay == 1);
}

TEST_CASE("a run that goes on past midnight is one run") {
  // Opened ten minutes before midnight; the run is from 30 s before it to 60 s after.
  Pour pour{{}, "2026-03-02T23:50:00.000Z"};
  const Checked seen = pour.placed(1, 0, 600, 0.6).ran("R1", 570, 660).checked();
  CHECK(under(seen) == near_enough(0.03 / 0.6));  // above 0.57 m it came after the run began
  CHECK(least(seen) == near_enough(60));
}

TEST_CASE("on a battered face reach along the form covers less height") {
  // A row at 0.4 m with 0.6 m of reach along a face 30 degrees off plumb, under a lift of 1 m.
  for (const double batter : {0., 30., -30.}) {
    PlanText plan{.bays = "[4]", .rows = {full_row("R1", 0.4)}};
    plan.element = R"("batter_deg":)" + std::to_string(batter);
    const Checked seen = Pour{plan}.placed(1, 0, 1000, 1).ran("R1", 1100, 1200).checked();
    CAPTURE(batter);
    CHECK(under(seen) == near_enough(1 - (0.4 + 0.6 * std::cos(batter * kPi / 180))));
  }
}

TEST_CASE("a deck is shaken from its underside through its thickness") {
  for (const auto& [reach, share] : {std::pair{0.2, 0.}, {0.25, 0.}, {0.15, 0.25}}) {
    PlanText plan{.kind = "deck", .length = 6, .height = 4, .thickness = 0.2, .bays = "[6]"};
    plan.lifts = "[0.2]";
    plan.rows = {row_text("R1", 0, {{"M1", 1.5, 1.5, reach}, {"M2", 4.5, 1.5, reach}})};
    const Checked seen = Pour{plan}.placed(1, 0, 600, 0.2).ran("R1", 700, 790).checked();
    const auto& tried = reach;
    CAPTURE(tried);
    CHECK(under(seen) == near_enough(share));
    CHECK(least(seen) == near_enough(share > 0 ? 0 : 90));
  }
}

TEST_CASE("a column thicker than 0.3 m is judged by its worst side") {
  PlanText plan{.kind = "column", .length = 0.5, .height = 3, .thickness = 0.5, .bays = "[0.5]"};
  plan.rows = {row_text("R1", 0.6, {{"M1", 0.25, 0.25}}),
               row_text("R1", 0.6, {{"M2", 0.25, 0.25}}, "[1]", "far")};
  Pour pour = one_lift(plan).ran("R1", 1000, 1100);
  CHECK(under(pour.checked()) == near_enough(1));
  pour.ran("R1", 1200, 1300, "far");
  CHECK(under(pour.checked()) == near_enough(0));
}

TEST_CASE("bays topped at different times are dosed by their own tops") {
  // Bay 1 is up at 600 s; bay 2 stands at 0.3 m then and is up at 1200 s. The run is from 700 to
  // 800 s: in bay 2 the concrete at 0.35 m comes as it begins, at 0.4 m as it ends.
  Pour pour;
  pour.at(0, lift_start(1)).at(600, lift_end(1, 0.6, 1)).at(600, top(0.3, 2));
  pour.at(1200, lift_end(1, 0.6, 2)).ran("R1", 700, 800);
  const Checked seen = pour.checked();
  CHECK(under(seen) == near_enough((0.6 - 0.355) * 2 / (0.6 * 4)));
  CHECK(mean(seen) == near_enough((0.6 * 100 + 0.35 * 100 + 0.05 * 50) / 1.2));
  CHECK(seen.only("dose-low").bay == 1);
}

TEST_CASE("a lift is what stands between its start and its end, bay by bay") {
  // Lift 2 gains nothing in bay 1 and 0.6 m in bay 2; only that is judged.
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "[1]"), row_text("R2", 0.9, {{"M1", 1}}, "[2]")};
  Pour pour = one_lift(plan).ran("R1", 700, 800);
  pour.at(1000, lift_start(2)).at(1600, lift_end(2, 1.2, 2)).ran("R2", 1700, 1800);
  CHECK(under(pour.checked(), 1) == near_enough(0));
  CHECK(under(pour.checked(), 2) == near_enough(1));
}

TEST_CASE("vibration after the concrete has set does nothing") {
  // Set 1800 s after it came; the run is from 2000 to 2100 s: below 0.29 m too little is left of
  // it (concrete at 0.2 m sets as it begins, at 0.3 m as it ends).
  const PlanText plan{.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":0.5)" + kQ,
                      .limits = kFresh};
  const Checked seen = one_lift(plan).ran("R1", 2000, 2100).checked();
  CHECK(under(seen) == near_enough(0.29 / 0.6));
  CHECK(mean(seen) == near_enough((0.1 * 50 + 0.3 * 100) / 0.6));
}

TEST_CASE("warm concrete sets sooner and cold later, by equivalent age") {
  for (const double degrees : {30., 20., 10.}) {
    const PlanText plan{.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":0.5)" + kQ,
                        .limits = kFresh};
    const double sets = 1800 / hurry(degrees);
    // A run of 300 s that begins 200 s after the lowest concrete has set.
    const double begin = std::round(sets) + 200;
    const Checked seen =
        one_lift(plan).at(0, temp(degrees)).ran("R1", begin, begin + 300).checked();
    CAPTURE(degrees);
    // Under 90 s where 1000 z + sets < begin + 90.
    CHECK(under(seen) == near_enough((begin + 90 - sets) / 1000 / 0.6));
  }
  CHECK(hurry(30) == doctest::Approx(1.755).epsilon(1e-3));
}

TEST_CASE("the temperature that counts is the latest measured when the concrete came") {
  // 30 degC from 300 s on: what came before sets by the mix's reference temperature.
  const PlanText plan{.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":0.5)" + kQ,
                      .limits = kFresh};
  const double warm = 1800 / hurry(30);
  const Checked seen =
      one_lift(plan).at(300, temp(30)).at(650, temp(5)).ran("R1", 1500, 1600).checked();
  // Below 0.3 m it is plastic up to 1800 s at least; above, under where 1000 z + warm < 1590.
  CHECK(under(seen) == near_enough((1.590 - warm / 1000 - 0.3) / 0.6));
}

TEST_CASE("the reference of the set time is the mix's own temperature") {
  const PlanText plan{.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":0.5,)"
                             R"("set_ref_temp":30)" +
                             kQ,
                      .limits = kFresh};
  // At 20 degC it sets in 1800 s x hurry(30); measured at 30 degC in 1800 s.
  CHECK(under(one_lift(plan).at(0, temp(30)).ran("R1", 2000, 2100).checked()) ==
        near_enough(0.29 / 0.6));
  const double slow = 1800 * hurry(30);
  const double begin = std::round(slow) + 200;
  const Checked seen = one_lift(plan).at(0, temp(20)).ran("R1", begin, begin + 300).checked();
  CHECK(under(seen) == near_enough((begin + 90 - slow) / 1000 / 0.6));
}

TEST_CASE("a live look leaves a lift alone until the next has begun or the pour is closed") {
  Pour pour = one_lift().ran("R1", 700, 750);
  CHECK_FALSE(pour.live(650).has("dose-low"));
  CHECK_FALSE(pour.live(2000).has("dose-low"));
  CHECK(pour.checked().has("dose-low"));
  CHECK(Pour{pour}.at(3000, lift_start(2)).live(3000).has("dose-low"));
  CHECK(Pour{pour}.at(3000, kClose).live(3000).has("dose-low"));
}

TEST_CASE("a run still going counts up to now") {
  Pour pour = one_lift().at(700, run("R1"));
  CHECK(least(pour.live(740)) == near_enough(40));
  CHECK(least(pour.live(800)) == near_enough(100));
}

TEST_CASE("a spot may get 4 x 120 s; a second more is told") {
  CHECK_FALSE(one_lift().ran("R1", 1000, 1480).checked().has("dose-high"));
  const Finding f = one_lift().ran("R1", 1000, 1481).checked().only("dose-high");
  CHECK(f.severity == Severity::note);
  CHECK(f.measured->si == near_enough(481));
  CHECK(f.limit->si == near_enough(480));
  CHECK(unit_of(f) == "s");
  const PlanText plan{.limits = R"("dose_max_s":150)"};
  CHECK_FALSE(one_lift(plan).ran("R1", 1000, 1600).checked().has("dose-high"));
  CHECK(one_lift(plan).ran("R1", 1000, 1601).checked().has("dose-high"));
}

TEST_CASE("what a spot got in two lifts adds up") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6, "[1,2]")};
  Pour pour = one_lift(plan).ran("R1", 700, 1000);
  pour.placed(2, 1200, 1800, 1.2).ran("R1", 2000, 2181);
  CHECK(pour.checked().only("dose-high").measured->si == near_enough(481));
}

TEST_CASE(
    "a run that nobody rested counts to the next event of the pour, and never past its close") {
  // Concrete reaches 0.6 m at 600 s; R1 runs from 700 s on and is never rested.
  const auto left_on = [] { return one_lift().at(700, run("R1")); };
  const std::string note = R"("do":"note","text":"pump moved")";
  CHECK(least(left_on().at(760, note).at(900, temp(21)).checked()) == about(60));
  CHECK(least(left_on().at(900, temp(21)).checked()) == about(200));
  CHECK(least(left_on().at(760, take_down("R1")).at(900, note).checked()) == about(60));
  CHECK(least(left_on().at(750, note).at(760, take_down("R1")).checked()) == about(50));
  CHECK(least(left_on().at(800, kClose).at(2000, note).checked()) == about(100));
  // Nothing is known of it after its own beginning: it earns nothing.
  CHECK(least(left_on().checked()) == about(0));
  // On the tablet it runs on, and somebody may yet rest it; once closed nobody may.
  CHECK(least(left_on().at(760, note).live(900)) == about(200));
  CHECK(least(left_on().at(750, kClose).live(900)) == about(50));
  // What is logged at the very moment it begins tells nothing of how long it ran.
  CHECK(least(left_on().at(700, note).at(780, note).checked()) == about(80));
}
