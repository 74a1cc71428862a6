// lift-deep: a lift against its planned depth; top-fell: a top read lower than it stood.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

TEST_CASE("a lift is deep over its planned depth and a tenth") {
  for (const auto& [height, deep] : {std::pair{0.6, false}, {0.66, false}, {0.67, true}}) {
    const Checked seen = Pour{}.placed(1, 0, 3600, height).checked();
    const auto& tried = height;
    CAPTURE(tried);
    REQUIRE(seen.has("lift-deep") == deep);
    if (!deep) continue;
    const Finding f = seen.only("lift-deep");
    CHECK(f.severity == Severity::mend);
    CHECK(f.measured->si == about(0.67));
    CHECK(f.limit->si == about(0.66));
    CHECK(unit_of(f) == "m");
    CHECK(source_text(f.source, kTerminal).starts_with("plan: lifts"));
  }
}

TEST_CASE("a lift's depth is from where it began, in its deepest bay") {
  Pour pour;
  pour.at(0, lift_start(1)).at(3600, lift_end(1, 0.6, 1)).at(3600, lift_end(1, 0.5, 2));
  pour.placed(2, 4000, 7600, 1.2);
  const Finding f = pour.checked().only("lift-deep");
  CHECK(f.lift == 2);
  CHECK(f.bay == 1);
  CHECK(f.measured->si == about(0.7));
}

TEST_CASE("a lift the plan does not know may be half a metre deep") {
  for (const auto& [height, deep] : {std::pair{0.49, false}, {0.5, false}, {0.51, true}}) {
    const Checked seen = Pour{{.lifts = "[]"}}.placed(1, 0, 3600, height).checked();
    const auto& tried = height;
    CAPTURE(tried);
    REQUIRE(seen.has("lift-deep") == deep);
    if (deep) CHECK(seen.only("lift-deep").limit->si == about(0.5));
    if (deep)
      CHECK(source_text(seen.only("lift-deep").source, kTerminal).find("memory") !=
            std::string::npos);
  }
}

TEST_CASE("a deck's lift is as deep as the deck is thick") {
  PlanText plan{.kind = "deck", .length = 6, .height = 4, .thickness = 0.2, .bays = "[6]"};
  plan.lifts = "[0.1,0.2]";
  plan.rows = {};
  CHECK_FALSE(
      Pour{plan}.placed(1, 0, 600, 0.1).placed(2, 900, 1500, 0.2).checked().has("lift-deep"));
  CHECK(Pour{plan}.placed(1, 0, 600, 0.2).checked().only("lift-deep").measured->si == about(0.2));
}

TEST_CASE("a top fell when it was read lower than it stood, in the bay it was read in") {
  for (const auto& [height, fell] : {std::pair{0.39, true}, {0.4, false}, {0.41, false}}) {
    Pour pour;
    pour.at(0, lift_start(1)).at(600, top(0.4)).at(700, top(height, 2));
    const auto& tried = height;
    CAPTURE(tried);
    REQUIRE(pour.checked().has("top-fell") == fell);
    if (!fell) continue;
    const Finding f = pour.checked().only("top-fell");
    CHECK(f.severity == Severity::mend);
    CHECK(f.bay == 1);
    CHECK(f.measured->si == about(0.39));
    CHECK(f.limit->si == about(0.4));
    CHECK(f.from == seconds(700));
    CHECK(in_metres(pour.checked().lift(1).top) == about(0.4));  // the higher stands
  }
}

TEST_CASE("one reading for all bays may fall in one of them") {
  Pour pour;
  pour.at(0, lift_start(1)).at(600, top(0.4, 1)).at(700, top(0.3));
  CHECK(pour.checked().only("top-fell").bay == 0);
}

TEST_CASE("a wrong top that was put right is no fall") {
  Pour pour;
  pour.at(0, lift_start(1)).at(600, R"("id":"x",)" + top(0.6)).at(700, top(0.4));
  CHECK(pour.checked().of("top-fell").size() == 2);
  Pour fixed = pour;
  fixed.at(800, R"("do":"fix","target":"x","set":{"height":0.3},"why":"misread")");
  CHECK_FALSE(fixed.checked().has("top-fell"));
  Pour struck = pour;
  struck.at(800, R"("do":"strike","target":"x","why":"wrong element")");
  CHECK_FALSE(struck.checked().has("top-fell"));
}
