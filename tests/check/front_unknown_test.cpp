// Bays filled one after the other: the rise counts from when concrete came to a bay; where nobody
// said when, it is not judged, and that is said. Rates are worked out by hand.
#include <doctest/doctest.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

PlanText limited(double rise_limit) {
  PlanText plan;
  plan.element = R"("rise_limit":)" + std::to_string(rise_limit);
  return plan;
}

// Bay 1 filled in the first half hour, bay 2 in the next: 0.6 m each.
Pour bay_by_bay(const PlanText& plan, bool first, bool second) {
  Pour pour{plan};
  pour.at(0, lift_start(1));
  if (first) pour.at(0, bay_start(1, 1));
  if (second) pour.at(1800, bay_start(1, 2));
  return pour.at(1800, lift_end(1, 0.6, 1)).at(3600, lift_end(1, 0.6, 2));
}

std::vector<NotJudged> rises(const Checked& seen) {
  std::vector<NotJudged> gaps;
  for (const NotJudged& gap : seen.report.not_judged) {
    if (gap.what == "rise") gaps.push_back(gap);
  }
  return gaps;
}

}  // namespace

TEST_CASE("a bay's rise counts from its start: 0.6 m in half an hour is 1.2 m/h, not 0.6") {
  const Checked seen = bay_by_bay(limited(1.1), true, true).checked();
  CHECK(in_metres_per_hour(*seen.lift(1).rise_window) == about(1.2));
  CHECK(in_metres_per_hour(*seen.lift(1).rise_mean) == about(1.2));
  CHECK(seen.only("rise-fast").measured->si == about(1.2));
  CHECK_FALSE(seen.has("front-unknown"));
  CHECK(rises(seen).empty());
}

TEST_CASE("where no start was tapped that is told once a lift, and the bay's rise is not judged") {
  const Checked seen = bay_by_bay(limited(1.3), true, false).checked();
  const Finding f = seen.only("front-unknown");
  CHECK(f.severity == Severity::mend);
  CHECK(f.lift == 1);
  CHECK(f.bay == 1);  // from 0: bay 2
  CHECK(seen.says(f).find("start of bay 2 not tapped") != std::string::npos);
  CHECK(in_metres_per_hour(*seen.lift(1).rise_window) == about(1.2));  // of bay 1
  REQUIRE(rises(seen).size() == 1);
  CHECK(sentence(rises(seen)[0], *seen.state.plan, kTerminal) ==
        "W1 lift 1: start of bay 2 not tapped: its rise may be higher than shown.");
  const Checked neither = bay_by_bay(limited(1.3), false, false).checked();
  CHECK_FALSE(neither.only("front-unknown").bay);
  CHECK(neither.says(neither.only("front-unknown")).find("bay 1, 2") != std::string::npos);
  CHECK_FALSE(neither.lift(1).rise_window);
  CHECK_FALSE(neither.lift(1).rise_mean);
  CHECK_FALSE(neither.has("rise-fast"));
  CHECK(rises(neither).size() == 2);
}

TEST_CASE("a rise over the limit as drawn is told all the same: it was no slower") {
  const Checked seen = bay_by_bay(limited(1.1), false, false).checked();
  CHECK(seen.only("rise-fast").measured->si == about(1.2));  // bay 1 from the lift's start
  CHECK_FALSE(seen.lift(1).rise_window);
  CHECK(in_metres_per_hour(*seen.lift(1).rise_at_least) == about(1.2));
}

TEST_CASE("an element of one bay, and a lift read as a whole, need no start") {
  PlanText one;
  one.bays = "[4]";
  Pour alone{one};
  alone.at(0, lift_start(1)).at(1800, top(0.3, 1)).at(3600, lift_end(1, 0.6, 1));
  CHECK_FALSE(alone.checked().has("front-unknown"));
  CHECK_FALSE(Pour{}.placed(1, 0, 3600, 0.6).checked().has("front-unknown"));
}

TEST_CASE(
    "concrete is vibrated from when it came: a row that ran before the bay was begun ran in vain") {
  const auto seen = [](bool started) {
    Pour pour{PlanText{}};
    pour.at(0, lift_start(1)).at(0, bay_start(1, 1)).at(600, lift_end(1, 0.6, 1));
    if (started) pour.at(1800, bay_start(1, 2));
    return pour.ran("R1", 700, 820).at(2400, lift_end(1, 0.6, 2)).checked();
  };
  // As drawn from the lift's start concrete stood in bay 2 while the row ran.
  CHECK(*seen(false).lift(1).under_share < *seen(true).lift(1).under_share);
  CHECK(*seen(true).lift(1).under_share == about(0.5));
}
