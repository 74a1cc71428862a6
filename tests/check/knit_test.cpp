// knit-late: from the moment concrete came at a lift's top to the moment the next lift covers it
// and a row or an insertion that reaches both works, against its set time. Lift 1 comes to 0.6 m at
// 600 s and sets there 5 h later, at 18600 s. The age of loads is set_clock_test's.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

constexpr double kSets = 18600;

// R1 reaches 0 to 0.6 m, R2 0.3 to 1.5 m: only R2 knits lift 2 to lift 1.
PlanText two_rows() {
  PlanText plan{.limits = kFresh};
  plan.mix += kQ;
  plan.rows = {full_row("R1", 0.25, "[1]", "near", 0.3), full_row("R2", 0.9, "[2]")};
  return plan;
}

// Lift 2 begins to cover lift 1 at a moment; it comes to 1.2 m half an hour later.
Pour covered(double when, const PlanText& plan = two_rows()) {
  return Pour{plan}.placed(1, 0, 600, 0.6).placed(2, when, when + 1800, 1.2);
}

}  // namespace

TEST_CASE("a joint must be worked before it sets, not as it sets") {
  CHECK_FALSE(covered(18000).ran("R2", kSets - 1, kSets + 100).checked().has("knit-late"));
  for (const double late : {0., 1.}) {
    const auto found =
        covered(18000).ran("R2", kSets + late, kSets + 100).checked().of("knit-late");
    REQUIRE(found.size() == 2);  // both bays
    const Finding& f = found[0];
    CHECK(f.severity == Severity::stop);
    CHECK(f.lift == 1);
    CHECK(f.bay == 0);
    CHECK(f.from == seconds(600));
    CHECK(f.to == seconds(kSets + late));
    CHECK(f.measured->si == doctest::Approx(18000 + late));
    CHECK(f.limit->si == doctest::Approx(18000));
    CHECK(unit_of(f) == "s");
    CHECK(found[1].bay == 1);
  }
}

TEST_CASE("a row that runs as the next lift covers the joint knits it then") {
  CHECK_FALSE(covered(kSets - 1).ran("R2", kSets - 50, kSets + 50).checked().has("knit-late"));
  CHECK(covered(kSets).ran("R2", kSets - 50, kSets + 50).checked().has("knit-late"));
}

TEST_CASE("a row that ran before the next lift came knits nothing") {
  const auto found = covered(2000).ran("R2", 1000, 1999).checked().of("knit-late");
  REQUIRE(found.size() == 2);
  CHECK_FALSE(found[0].to);
  CHECK_FALSE(found[0].measured);
  CHECK(found[0].limit->si == doctest::Approx(18000));
}

TEST_CASE("a row that does not reach the joint knits nothing") {
  CHECK(covered(2000).ran("R1", 4000, 4100).checked().has("knit-late"));  // reaches 0.55 m
  PlanText plan = two_rows();
  plan.rows[1] = full_row("R2", 1.3, "[2]");  // reaches 0.7 m and up
  CHECK(covered(2000, plan).ran("R2", 4000, 4100).checked().has("knit-late"));
}

TEST_CASE("on a battered face a row reaches less far down to the joint") {
  // 1.15 - 0.6 cos 30 = 0.63 m.
  PlanText plan = two_rows();
  plan.rows[1] = full_row("R2", 1.15, "[2]");
  CHECK_FALSE(covered(2000, plan).ran("R2", 4000, 4100).checked().has("knit-late"));
  plan.element = R"("batter_deg":30)";
  CHECK(covered(2000, plan).ran("R2", 4000, 4100).checked().has("knit-late"));
}

TEST_CASE("the worst spot along a bay counts") {
  PlanText plan = two_rows();
  plan.rows[1] = row_text("R2", 0.9, {{"M1", 1, 1}, {"M2", 3, 0.9}}, "[2]");
  const Checked seen = covered(2000, plan).ran("R2", 4000, 4100).checked();
  CHECK(seen.only("knit-late").bay == 1);
  // Where two rows share a bay it is knitted when the second has run.
  plan.rows = {row_text("R2", 0.9, {{"M1", 1, 1}}, "[2]"),
               row_text("R3", 0.9, {{"M2", 3, 1}}, "[2]")};
  CHECK_FALSE(
      covered(2000, plan).ran("R2", 4000, 4100).ran("R3", 9000, 9100).checked().has("knit-late"));
  plan.bays = "[4]";
  CHECK(covered(2000, plan)
            .ran("R2", 4000, 4100)
            .ran("R3", kSets + 60, kSets + 160)
            .checked()
            .only("knit-late")
            .measured->si == doctest::Approx(18060));
}

TEST_CASE("motors that were not hung knit nothing") {
  const Checked seen = covered(2000).at(3900, hang("R2", {"R2-1"})).ran("R2", 4000, 4100).checked();
  CHECK(seen.only("knit-late").bay == 1);
}

TEST_CASE("either side knits, thick or thin") {
  for (const double thickness : {0.25, 0.5}) {
    PlanText plan = two_rows();
    plan.thickness = thickness;
    plan.rows.push_back(full_row("R2", 0.9, "[2]", "far"));
    CAPTURE(thickness);
    CHECK_FALSE(covered(2000, plan).ran("R2", 4000, 4100, "far").checked().has("knit-late"));
  }
}

TEST_CASE("an insertion knits when it goes deep enough into the lift below") {
  CHECK_FALSE(covered(2000).at(3000, insert(2)).checked().has("knit-late"));
  CHECK(covered(2000).at(3000, insert(2, 0, 0.27, 0.14)).checked().has("knit-late"));
  CHECK(covered(2000).at(1900, insert(2)).checked().has("knit-late"));  // before it was covered
  CHECK_FALSE(covered(18000).at(kSets - 1, insert(2)).checked().has("knit-late"));
  CHECK(covered(18000).at(kSets, insert(2)).checked().has("knit-late"));
  CHECK(covered(2000).at(3000, insert(2, 1)).checked().only("knit-late").bay == 1);
  PlanText plan = two_rows();
  plan.limits += R"(,"knit_depth":0.2)";
  CHECK(covered(2000, plan).at(3000, insert(2, 0, 0.27, 0.19)).checked().has("knit-late"));
  CHECK_FALSE(covered(2000, plan).at(3000, insert(2, 0, 0.27, 0.2)).checked().has("knit-late"));
}

TEST_CASE("each bay's joint is covered when its own top begins to rise over it") {
  // Bay 2 still stands at 0.6 m at 3600 s; R2 ran before that, and again just too late.
  Pour pour{two_rows()};
  pour.placed(1, 0, 600, 0.6).at(2000, lift_start(2)).at(3600, lift_end(2, 1.2, 1));
  pour.at(3600, top(0.6, 2)).at(5400, lift_end(2, 1.2, 2)).ran("R2", 3400, 3500);
  CHECK(pour.checked().only("knit-late").bay == 1);
  pour.ran("R2", 5500, 5600);
  CHECK_FALSE(pour.checked().has("knit-late"));
}

TEST_CASE("warm concrete must be knitted sooner and cold may be later, by equivalent age") {
  for (const double degrees : {10., 30.}) {
    const double sets = 600 + 18000 / std::exp(-5000 * (1 / (degrees + 273.15) - 1 / 293.15));
    const auto knitted = [&](double when) {
      return covered(2000).at(0, temp(degrees)).ran("R2", when, when + 100).checked();
    };
    CAPTURE(degrees);
    CHECK_FALSE(knitted(std::floor(sets) - 1).has("knit-late"));
    REQUIRE(knitted(std::ceil(sets) + 1).has("knit-late"));
    CHECK(knitted(std::ceil(sets) + 1).of("knit-late")[0].limit->si == doctest::Approx(sets - 600));
  }
}

TEST_CASE("a temperature measured after the joint's concrete came changes nothing") {
  const auto found =
      covered(2000).at(601, temp(35)).ran("R2", kSets - 1, kSets + 99).checked().of("knit-late");
  for (const Finding& f : found) CHECK(f.lift == 2);  // left with no lift on it, and warm
}

TEST_CASE("a joint inside an opening does not exist") {
  PlanText plan = two_rows();
  plan.openings = R"([{"x":2,"z":0.3,"w":2,"h":0.6}])";
  const Checked seen = covered(2000, plan).checked();
  CHECK(seen.only("knit-late").bay == 0);
}

TEST_CASE("joints are sought across midnight") {
  // Opened at 20:00; the joint sets at 01:10.
  const auto knitted = [](double when) {
    Pour pour{two_rows(), "2026-03-02T20:00:00.000Z"};
    pour.placed(1, 0, 600, 0.6).placed(2, 2000, 3800, 1.2).ran("R2", when, when + 100);
    return pour.checked();
  };
  CHECK_FALSE(knitted(kSets - 1).has("knit-late"));
  CHECK(knitted(kSets + 1).has("knit-late"));
}

TEST_CASE("the top of the last lift is no joint") {
  CHECK_FALSE(Pour{two_rows()}.placed(1, 0, 600, 0.6).checked().has("knit-late"));
  CHECK_FALSE(Pour{two_rows()}.placed(1, 0, 600, 0.6).at(90000, kClose).checked().has("knit-late"));
}

TEST_CASE("a column's joint is a wall's") {
  PlanText plan{.kind = "column",
                .length = 0.5,
                .height = 3,
                .thickness = 0.5,
                .bays = "[0.5]",
                .limits = kFresh};
  plan.rows = {row_text("R2", 0.9, {{"M1", 0.25, 0.25}}, "[2]")};
  CHECK_FALSE(covered(2000, plan).ran("R2", 4000, 4100).checked().has("knit-late"));
  CHECK(covered(2000, plan).ran("R2", kSets, kSets + 100).checked().has("knit-late"));
}

TEST_CASE("a live look waits for the set time before it calls a joint unknitted") {
  const Pour pour = covered(2000);
  CHECK_FALSE(pour.live(4000).has("knit-late"));
  CHECK_FALSE(pour.live(kSets - 1).has("knit-late"));
  CHECK(pour.live(kSets + 1).has("knit-late"));
  CHECK(pour.checked().has("knit-late"));  // a finished look does not wait
}

TEST_CASE("a joint a quarter of an hour from its set is a stop, until it is worked or closed") {
  // Lift 1 comes to 0.45 m at 450 s: what lies 150 mm under the joint sets first, at 18450 s.
  const Pour alone = Pour{two_rows()}.placed(1, 0, 600, 0.6);
  CHECK_FALSE(alone.live(18450 - 901).has("knit-near"));
  const Finding f = alone.live(18450 - 900).only("knit-near");
  CHECK(f.severity == Severity::stop);
  CHECK(f.lift == 1);
  CHECK(f.measured->si == about(900));
  CHECK(*f.to == seconds(18450));
  CHECK(alone.live(18500).only("knit-near").measured->si == 0.);
  CHECK_FALSE(alone.live(kSets).has("knit-near"));  // knit-late's from here
  CHECK_FALSE(Pour{alone}.at(17000, kClose).live(18000).has("knit-near"));
  CHECK_FALSE(alone.checked().has("knit-near"));
  const Pour over =
      Pour{two_rows()}.placed(1, 0, 600, 0.6).at(17000, lift_start(2)).at(17800, top(0.9));
  CHECK(over.live(18000).has("knit-near"));
  CHECK_FALSE(Pour{over}.ran("R2", 17900, 17990).live(18000).has("knit-near"));
}

TEST_CASE("a top left to set with a lift still to come is told while the pour goes on") {
  const Pour alone = Pour{two_rows()}.placed(1, 0, 600, 0.6);
  CHECK_FALSE(alone.live(kSets - 1).has("knit-late"));
  const auto left = alone.live(kSets).of("knit-late");
  REQUIRE(left.size() == 2);
  CHECK(left[0].limit->si == about(18000));
  CHECK_FALSE(Pour{alone}.at(700, kClose).live(20000).has("knit-late"));
  // The next lift was started, but none of its concrete came.
  const auto begun = Pour{alone}.at(1000, lift_start(2)).live(30000).of("knit-late");
  REQUIRE(begun.size() == 2);
  CHECK(*begun[0].to == seconds(30000));  // still so: it stays under attention
}

TEST_CASE("a decision on a joint, by whoever logs it, ends the stop for its lift and bay alone") {
  const auto decided = [](const std::string& where) {
    return covered(18700)
        .at(19000, R"("do":"joint","element":"W1","decision":"bush-hammer and epoxy")" + where)
        .checked()
        .of("knit-late");
  };
  const auto of_lift_1 = [](const std::vector<Finding>& all) {
    return std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.lift == 1; });
  };
  CHECK(of_lift_1(covered(18700).checked().of("knit-late")) == 2);
  CHECK(of_lift_1(decided("")) == 0);
  CHECK(of_lift_1(decided(R"(,"lift":1)")) == 0);
  CHECK(of_lift_1(decided(R"(,"lift":2)")) == 2);
  CHECK(of_lift_1(decided(R"(,"lift":1,"bay":2,"treatment":"wash")")) == 1);
  const Pour near =
      Pour{two_rows()}
          .placed(1, 0, 600, 0.6)
          .at(17000, R"("do":"joint","element":"W1","lift":1,"decision":"construction joint")");
  CHECK_FALSE(near.live(18000).has("knit-near"));
}

TEST_CASE("strips of a deck five and a half hours apart tell the joint between them") {
  // A strip sets 5 h after it came; both are 0.25 m thick, 10 minutes in the placing.
  const auto strips = [](double apart, const std::string& more = "") {
    PlanText plan{.kind = "deck",
                  .length = 4,
                  .height = 3,
                  .thickness = 0.25,
                  .lifts = "[0.25]",
                  .limits = kFresh};
    plan.mix += kQ;
    plan.rows = {};
    Pour pour{plan};
    pour.at(0, lift_start(1)).at(600, lift_end(1, 0.25, 1));
    pour.at(0, bay_start(1, 1)).at(apart, bay_start(1, 2)).at(600 + apart, lift_end(1, 0.25, 2));
    if (!more.empty()) pour.at(30000, more);
    return pour.checked();
  };
  const Checked late = strips(19800);
  const Finding f = late.only("knit-late");
  CHECK(f.severity == Severity::stop);
  CHECK(f.bay == 1);
  CHECK(f.measured->si == about(19800));
  CHECK(f.limit->si == about(18000));
  CHECK(late.says(f).find("after bay 1, which set") != std::string::npos);
  CHECK_FALSE(strips(17900).has("knit-late"));
  CHECK_FALSE(
      strips(19800, R"("do":"joint","element":"W1","bay":1,"decision":"dowels")").has("knit-late"));
}
