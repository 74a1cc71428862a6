// Decks: layer by layer, bay by bay, worked by internal vibrators from above.
#include <doctest/doctest.h>

#include <algorithm>

#include "check/check.h"
#include "planner/follow_sheet.h"
#include "pour/plan/plan_json.h"

using namespace rb;

namespace {

PlanWish deck() {
  PlanWish wish = wish_for(ElementId{"D1"});
  wish.kind = ElementKind::deck;
  wish.length = metres(12);
  wish.height = metres(8);
  wish.thickness = metres(0.25);
  wish.form_rating = Pressure{};
  wish.motor = {};
  return wish;
}

PlannedPour planned(const PlanWish& wish) {
  auto plan = plan_pour(wish);
  REQUIRE_MESSAGE(plan, (plan ? std::string{} : to_text(plan.error())));
  return *std::move(plan);
}

void check_refused(const PlanWish& wish, const char* limit, const char* says = "") {
  const auto plan = plan_pour(wish);
  REQUIRE_FALSE(plan);
  CAPTURE(to_text(plan.error()));
  CHECK(plan.error().where.text().find(limit) != std::string::npos);
  CHECK(plan.error().what.text().find(says) != std::string::npos);
}

}  // namespace

TEST_CASE("a deck is planned bay by bay, as fast as the hands there are insert it") {
  PlanWish wish = deck();
  const PlannedPour two = planned(wish);
  const Element& element = two.plan.elements.front();
  CHECK(element.rows.empty());
  CHECK(two.plan.power.empty());
  REQUIRE(two.lifts.size() == 1);
  CHECK(in_cubic_metres(two.concrete) == doctest::Approx(12 * 8 * 0.25));
  REQUIRE(two.lifts.front().inserts.size() == element.bays.size());
  CHECK(two.sets_rise == PlanLimit::vibrators);
  wish.crew = 4;
  const PlannedPour four = planned(wish);
  CHECK(four.placing > two.placing);
  CHECK(four.duration < two.duration);
  wish.trucks_per_hour = 1;
  const PlannedPour trucks = planned(wish);
  CHECK(trucks.sets_rise == PlanLimit::trucks);
  CHECK(trade::in_cubic_metres_per_hour(trucks.placing) == doctest::Approx(6.0));
  // 0.9 m goes in as two layers of 0.45 m, the second worked into the first.
  wish = deck();
  wish.thickness = metres(0.9);
  wish.length = metres(6);
  wish.crew = 6;
  const PlannedPour thick = planned(wish);
  REQUIRE(thick.lifts.size() == 2);
  CHECK(thick.lifts.front().top == metres(0.45));
  CHECK(thick.lifts.back().begins >= thick.lifts.front().rested());
}

TEST_CASE("beams under a deck are filled and worked with the bays they lie under") {
  PlanWish wish = deck();  // 12 m x 8 m x 0.25 m, four bays of 3 m
  const PlannedPour plain = planned(wish);
  wish.beams = {{metres(5), metres(2), metres(0.5)}, {std::nullopt, metres(0.4), metres(0.6)}};
  const PlannedPour plan = planned(wish);
  const Element& element = plan.plan.elements.front();
  // Across, 2 m wide over bays 2 and 3; along, 0.4 m wide; where they cross 0.5 m deep counts once.
  const double along = 0.4 * 0.6 * 12;
  const double across = 2 * 0.5 * 8;
  const double crossing = 2 * 0.4 * 0.5;
  CHECK(in_cubic_metres(plan.concrete) ==
        doctest::Approx(12 * 8 * 0.25 + along + across - crossing));
  CHECK(in_cubic_metres(element.beam_volume(0)) == doctest::Approx(0.4 * 0.6 * 3));
  CHECK(in_cubic_metres(element.beam_volume(1)) == doctest::Approx(0.4 * 0.6 * 3 + 0.5 * 8 - 0.2));
  for (std::size_t bay = 0; bay < 4; ++bay) {
    const auto& with = plan.lifts.front().inserts[bay];
    CHECK(with.points > plain.lifts.front().inserts[bay].points);
  }
  const auto read = parse_plan(to_json(plan.plan), "plan");
  REQUIRE(read);
  CHECK(read->elements.front().beams == wish.beams);
  CHECK(check(followed(plan, wish), AsOf::end(followed(plan, wish))).clean());
  const auto beams = wish.beams;
  wish = wish_for(ElementId{"W1"});
  wish.beams = beams;
  check_refused(wish, "beams");
}

TEST_CASE("a layer of a deck that sets before the next is worked into it is told") {
  PlanWish wish = deck();
  wish.thickness = metres(0.9);
  wish.length = metres(6);
  wish.crew = 6;
  PlannedPour plan = planned(wish);
  CHECK(check(followed(plan, wish), AsOf::end(followed(plan, wish))).clean());
  const Seconds late = plan.sets;
  LiftStep& second = plan.lifts.back();
  second.begins += late;
  for (InsertStep& in : second.inserts) {
    in.fills += late;
    in.filled += late;
    in.begins += late;
  }
  plan.duration += late;
  const PourState state = followed(plan, wish);
  const CheckReport report = check(state, AsOf::end(state));
  CHECK(std::any_of(report.findings.begin(), report.findings.end(),
                    [](const Finding& finding) { return finding.rule == "knit-late"; }));
}

TEST_CASE("a deck that cannot be knitted as it is placed says what holds it back") {
  PlanWish wish = deck();
  wish.trucks_per_hour = 0.5;
  check_refused(wish, "knit", "6.00 m");
  wish = deck();
  wish.mix.initial_set = hours(1);
  wish.crew = 1;
  check_refused(wish, "knit", "1 internal vibrators");
}
