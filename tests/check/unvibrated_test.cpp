// unvibrated: concrete that no row reached and nobody inserted into before it was covered or
// closed.
#include <doctest/doctest.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// A wall with a row for its first lift only.
Pour two_lifts() {
  return Pour{}.placed(1, 0, 600, 0.6).ran("R1", 600, 700).placed(2, 1000, 1600, 1.2);
}

PlanText column() {
  PlanText plan{.kind = "column", .length = 0.9, .height = 4.5, .thickness = 0.9, .bays = "[0.9]"};
  plan.lifts = "[4.5]";
  plan.rows = {};
  return plan;
}

}  // namespace

TEST_CASE("a lift that nothing vibrated is a stop once it is covered, and not before") {
  const Pour pour = Pour{}.placed(1, 0, 600, 0.6);
  CHECK_FALSE(pour.live(900).has("unvibrated"));
  const Finding f = Pour{pour}.at(1000, lift_start(2)).live(1000).only("unvibrated");
  CHECK(f.severity == Severity::stop);
  CHECK(f.lift == 1);
  CHECK_FALSE(f.bay);
  CHECK(*f.to == seconds(1000));
  CHECK(Pour{pour}.at(1000, kClose).checked().has("unvibrated"));
}

TEST_CASE("what follows from no vibration at all is not told again") {
  const Checked seen = Pour{}.placed(1, 0, 600, 0.6).at(1000, kClose).checked();
  CHECK(seen.has("unvibrated"));
  CHECK_FALSE(seen.has("dose-low"));
  CHECK_FALSE(seen.has("row-missed"));
  PlanText thick{.thickness = 0.5};
  CHECK_FALSE(Pour{thick}.placed(1, 0, 600, 0.6).at(1000, kClose).checked().has("insert-missing"));
}

TEST_CASE("a second's run of a row that reaches it, or an insertion of any kind, is some") {
  const auto with = [](const std::string& what, const std::string& then = {}) {
    Pour pour = Pour{}.placed(1, 0, 600, 0.6).at(650, what);
    if (!then.empty()) pour.at(651, then);
    return pour.at(1000, kClose).checked();
  };
  CHECK_FALSE(with(run("R1"), rest("R1")).has("unvibrated"));
  CHECK(with(run("R1"), rest("R1")).has("dose-low"));
  CHECK_FALSE(with(insert(1)).has("unvibrated"));
  CHECK(with(insert(2)).has("unvibrated"));  // another lift's
}

TEST_CASE("a row below the lift or beside the bay vibrates it not") {
  // R1 reaches 0 to 1.2 m: lift 3 goes without.
  const Checked high = two_lifts()
                           .ran("R1", 1600, 1700)
                           .placed(3, 2000, 2600, 1.8)
                           .ran("R1", 2600, 2700)
                           .at(3000, kClose)
                           .checked();
  CHECK(high.only("unvibrated").lift == 3);
  PlanText plan;
  plan.rows = {row_text("R1", 0.6, {{"R1-1", 1, 0.9}})};
  const Checked beside =
      Pour{plan}.placed(1, 0, 600, 0.6).ran("R1", 600, 700).at(1000, kClose).checked();
  CHECK(beside.only("unvibrated").bay == 1);
  CHECK(beside.only("dose-low").bay == 0);  // its own share, the bare bay not counted
  CHECK(beside.only("dose-low").measured->si == about(0.1));
}

TEST_CASE("a bay that gained nothing wants no vibration") {
  Pour pour;
  pour.at(0, lift_start(1)).at(600, lift_end(1, 0.6, 1)).at(650, insert(1, 1)).at(1000, kClose);
  CHECK_FALSE(pour.checked().has("unvibrated"));
}

TEST_CASE("a column or a deck without rows is told when nothing vibrated it") {
  const auto column_pour = [](bool insert_one) {
    Pour pour{column()};
    pour.placed(1, 0, 1200, 4.5);
    if (insert_one) pour.at(1210, insert(1));
    return pour.at(2000, kClose).checked();
  };
  CHECK(column_pour(false).only("unvibrated").severity == Severity::stop);
  CHECK_FALSE(column_pour(true).has("unvibrated"));
  PlanText deck{.kind = "deck", .length = 6, .height = 4, .thickness = 0.2, .bays = "[6]"};
  deck.lifts = "[0.2]";
  deck.rows = {};
  CHECK(Pour{deck}.placed(1, 0, 600, 0.2).at(900, kClose).checked().has("unvibrated"));
}
