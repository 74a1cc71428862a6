// insert-missing: sections over 0.3 m want internal vibration logged for each lift and bay;
// insert-sparse: spacing against the group's radius of action, depth into the lift below.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

PlanText thick() {
  return {.thickness = 0.5};
}

// Its row runs, where it has one: concrete that nothing vibrated at all is another rule's.
Pour thick_lift(const PlanText& plan) {
  Pour pour = Pour{plan}.placed(1, 0, 600, 0.6);
  return plan.rows.empty() ? pour : pour.ran("R1", 600, 700);
}

Checked inserted(int group, double spacing, double depth, int lift = 2, const PlanText& plan = {}) {
  Pour pour = thick_lift(plan).placed(2, 1000, 1600, 1.2);
  return pour.at(1700, insert(lift, 1, spacing, depth, group)).checked();
}

}  // namespace

TEST_CASE("sections over 0.3 m want insertions, in every bay") {
  for (const double thin : {0.25, 0.3}) {
    CHECK_FALSE(thick_lift({.thickness = thin}).checked().has("insert-missing"));
  }
  const auto found = thick_lift({.thickness = 0.301}).checked().of("insert-missing");
  REQUIRE(found.size() == 2);
  CHECK(found[0].severity == Severity::mend);
  CHECK(found[0].lift == 1);
  CHECK(found[0].bay == 0);
  CHECK(found[1].bay == 1);
  CHECK(found[0].measured->si == about(0.301));
  CHECK(found[0].limit->si == about(0.3));
  CHECK(unit_of(found[0]) == "m");
}

TEST_CASE("an insertion counts for its bay, one without a bay for all") {
  CHECK(thick_lift(thick()).at(700, insert(1, 1)).checked().only("insert-missing").bay == 1);
  CHECK(thick_lift(thick()).at(700, insert(1, 2)).checked().only("insert-missing").bay == 0);
  CHECK_FALSE(thick_lift(thick()).at(700, insert(1)).checked().has("insert-missing"));
}

TEST_CASE("each lift wants insertions of its own") {
  Pour pour =
      thick_lift(thick()).placed(2, 1000, 1600, 1.2).ran("R1", 1600, 1700).at(700, insert(1));
  const auto found = pour.checked().of("insert-missing");
  REQUIRE(found.size() == 2);
  CHECK(found[0].lift == 2);
  CHECK(found[1].lift == 2);
  CHECK_FALSE(pour.at(1700, insert(2)).checked().has("insert-missing"));
}

TEST_CASE("a bay that gained nothing wants none") {
  Pour pour{thick()};
  pour.at(0, lift_start(1)).at(600, lift_end(1, 0.6, 1)).at(700, insert(1, 1));
  CHECK_FALSE(pour.checked().has("insert-missing"));
}

TEST_CASE("a thick column and a thick deck without rows: no insertion is no vibration at all") {
  PlanText column{.kind = "column", .length = 0.5, .thickness = 0.5, .bays = "[0.5]"};
  column.rows = {};
  CHECK(thick_lift(column).at(700, kClose).checked().has("unvibrated"));
  CHECK_FALSE(thick_lift(column).at(650, insert(1)).checked().has("insert-missing"));
  PlanText deck{.kind = "deck", .length = 6, .height = 4, .thickness = 0.35, .bays = "[6]"};
  deck.lifts = "[0.35]";
  deck.rows = {};
  CHECK(Pour{deck}.placed(1, 0, 600, 0.35).checked().has("unvibrated"));
  deck.thickness = 0.2;
  deck.lifts = "[0.2]";
  CHECK_FALSE(Pour{deck}.placed(1, 0, 600, 0.2).checked().has("insert-missing"));
}

TEST_CASE("a live look asks for insertions when the next lift has begun or the pour is closed") {
  Pour pour = thick_lift(thick());
  CHECK_FALSE(pour.live(700).has("insert-missing"));
  CHECK(Pour{pour}.at(1000, lift_start(2)).live(1000).has("insert-missing"));
  CHECK(Pour{pour}.at(1000, kClose).live(1000).has("insert-missing"));
}

TEST_CASE("insertions stand no wider apart than 1.5 x the mean radius of their group") {
  // The check values' table (read): 80 to 150, 130 to 250, 180 to 360, 300 to 500, 400 to 600 mm.
  const std::vector<double> radii{0.115, 0.19, 0.27, 0.4, 0.5};
  for (int group = 1; group <= 5; ++group) {
    const double most = 1.5 * radii[static_cast<std::size_t>(group) - 1];
    CAPTURE(group);
    CHECK_FALSE(inserted(group, most - 0.001, 0.15).has("insert-sparse"));
    CHECK_FALSE(inserted(group, most, 0.15).has("insert-sparse"));
    const Finding f = inserted(group, most + 0.001, 0.15).only("insert-sparse");
    CHECK(f.severity == Severity::mend);
    CHECK(f.measured->si == about(most + 0.001));
    CHECK(f.limit->si == about(most));
    CHECK(unit_of(f) == "m");
    CHECK(f.lift == 2);
    CHECK(f.bay == 0);
    CHECK(source_text(f.source, kTerminal).starts_with("default: ACI 309R"));
  }
}

TEST_CASE("insertions go 0.15 m into the lift below, where there is one") {
  CHECK_FALSE(inserted(3, 0.27, 0.16).has("insert-sparse"));
  CHECK_FALSE(inserted(3, 0.27, 0.15).has("insert-sparse"));
  const Finding f = inserted(3, 0.27, 0.14).only("insert-sparse");
  CHECK(f.measured->si == about(0.14));
  CHECK(f.limit->si == about(0.15));
  CHECK_FALSE(inserted(3, 0.27, 0, 1).has("insert-sparse"));
}

TEST_CASE("both limits may be the plan's, and the source says which is") {
  const PlanText plan{.limits = R"("insert_spacing_factor":1.2)"};
  CHECK_FALSE(inserted(4, 0.48, 0.15, 2, plan).has("insert-sparse"));
  const Finding wide = inserted(4, 0.49, 0.15, 2, plan).only("insert-sparse");
  CHECK(wide.limit->si == about(0.48));
  CHECK(source_text(wide.source, kTerminal) == "plan");
  CHECK(source_text(inserted(4, 0.48, 0.14, 2, plan).only("insert-sparse").source, kTerminal)
            .starts_with("default"));
  const PlanText deep{.limits = R"("knit_depth":0.2)"};
  CHECK_FALSE(inserted(4, 0.6, 0.2, 2, deep).has("insert-sparse"));
  CHECK(source_text(inserted(4, 0.6, 0.19, 2, deep).only("insert-sparse").source, kTerminal) ==
        "plan");
  CHECK(source_text(inserted(4, 0.61, 0.2, 2, deep).only("insert-sparse").source, kTerminal)
            .starts_with("default"));
}

TEST_CASE("any factor a plan may name is held to") {
  const PlanText plan{.limits = R"("insert_spacing_factor":5)"};
  CHECK_FALSE(inserted(1, 0.575, 0.15, 2, plan).has("insert-sparse"));
  CHECK(inserted(1, 0.58, 0.15, 2, plan).only("insert-sparse").limit->si == about(0.575));
}

TEST_CASE("many insertions of one lift that stand too far apart are one finding, with the worst") {
  Pour pour{PlanText{}};
  pour.placed(1, 0, 600, 0.6).at(620, insert(1, 1, 0.5)).at(640, insert(1, 2, 0.8));
  pour.at(660, insert(1, 2, 0.6));
  const Checked seen = pour.checked();
  const Finding f = seen.only("insert-sparse");
  CHECK(f.measured->si == about(0.8));
  CHECK_FALSE(f.bay);
  CHECK(seen.says(f).find("insertions so: 3") != std::string::npos);
  CHECK(seen.says(f).find("group 3 reaches 0.18 m to 0.36 m") != std::string::npos);
}

TEST_CASE("an insertion both too wide and too shallow is told of once") {
  CHECK(inserted(3, 0.5, 0.1).only("insert-sparse").measured->si == about(0.5));
}

TEST_CASE("an insertion that never came down to a joint does not knit it") {
  // Lifts of 1.2 m; worked from the top it reaches 0.75 m down.
  PlanText deep{.height = 2.4, .rows = {}};
  deep.lifts = "[1.2,2.4]";
  Pour pour{deep};
  pour.placed(1, 0, 600, 1.2).at(620, insert(1)).placed(2, 1000, 1600, 2.4);
  CHECK(Pour{pour}.at(1620, insert(2)).at(40000, kClose).checked().has("knit-late"));
  // Once while 0.5 m stood on it: that one came down to it.
  CHECK_FALSE(
      pour.at(1250, insert(2)).at(1620, insert(2)).at(40000, kClose).checked().has("knit-late"));
}

TEST_CASE("an insertion told after the close takes nothing away") {
  PlanText column{.kind = "column", .length = 0.5, .thickness = 0.5, .bays = "[0.5]"};
  column.rows = {};
  Pour pour = thick_lift(column).at(700, kClose);
  REQUIRE(pour.checked().has("unvibrated"));
  CHECK(pour.at(760, insert(1)).checked().has("unvibrated"));
}

TEST_CASE("too few points heal nothing, however close they are said to be") {
  // Bay 2 without its row; 0.25 m x 2 m at 0.405 m wants five points a layer.
  const auto with = [](int points) {
    Pour pour{PlanText{.rows = {row_text("R1", 0.6, {{"M1", 1}})}}};
    pour.placed(1, 0, 600, 0.6).ran("R1", 700, 800);
    pour.at(650, insert(1, 2) + fmt::format(R"(,"points":{})", points));
    return pour.checked();
  };
  CHECK(with(4).has("dose-low"));
  CHECK_FALSE(with(5).has("dose-low"));
}
