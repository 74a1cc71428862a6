#include "pour/planner/planner.h"
#include "pour/log/log_entry.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "check/check.h"
#include "follow_sheet.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "pour/outlook/form_pressure.h"
#include "pour/plan/plan_json.h"
#include "random_wish.h"

using namespace rb;

namespace {

PlanWish wall() {
  return wish_for(ElementId{"W1"});
}

PlannedPour planned(const PlanWish& wish) {
  auto plan = plan_pour(wish);
  REQUIRE_MESSAGE(plan, (plan ? std::string{} : to_text(plan.error())));
  return *std::move(plan);
}

void check_refused(const PlanWish& wish, const char* limit, const char* says = "") {
  const auto plan = plan_pour(wish);
  CAPTURE(limit);
  REQUIRE_FALSE(plan);
  CAPTURE(to_text(plan.error()));
  CHECK(plan.error().where.text().find(limit) != std::string::npos);
  CHECK(plan.error().what.text().find(says) != std::string::npos);
  CHECK_FALSE(plan.error().remedy.empty());
}

}  // namespace

TEST_CASE("a pour that follows its run sheet exactly has nothing to stop or mend") {
  std::vector<PlanWish> wishes(1, wall());
  for (const double height : {0.9, 2.4, 3.65, 7.2}) {
    for (const double length : {1.2, 5.0, 20.0}) {
      wishes.push_back(wall());
      wishes.back().height = metres(height);
      wishes.back().length = metres(length);
      wishes.back().haul = seconds(600);  // little is placed in an hour
      if (length < 5) wishes.back().load = cubic_metres(0.5);
      wishes.back().given.load = length < 5;
    }
  }
  wishes.push_back(wall());
  wishes.back().thickness = metres(0.5);
  wishes.back().both_sides = true;
  wishes.push_back(wall());
  wishes.back().kind = ElementKind::column;
  wishes.back().length = wishes.back().thickness = metres(0.8);
  wishes.back().haul = seconds(600);
  wishes.back().load = cubic_metres(0.5);
  wishes.back().given.load = true;
  wishes.push_back(wall());
  wishes.back().form_rating = kilopascals(45);
  wishes.back().reach_pressure = metres(0.75);
  wishes.push_back(wall());
  wishes.back().concrete = celsius(12);
  wishes.push_back(wall());
  wishes.back().method = trade::PressureMethod::ciria108;
  wishes.push_back(wall());
  wishes.back().method = trade::PressureMethod::din18218;
  wishes.push_back(wall());
  wishes.back().reach_z = metres(0.4);
  for (PlanWish& wish : wishes) {
    // Small loads are asked for where hands that move motors hold the pace down.
    if (!wish.given.load) wish.load = cubic_metres(2);
    wish.given.load = true;
  }
  for (const PlanWish& wish : wishes) {
    CAPTURE(in_metres(wish.length));
    CAPTURE(in_metres(wish.height));
    CAPTURE(in_metres(wish.thickness));
    const PlannedPour plan = planned(wish);
    const PourState state = followed(plan, wish);
    for (const LogEntry& entry : state.log) {
      CAPTURE(entry.why_not.text());
      CHECK(entry.sense == LogEntry::Sense::counts);
    }
    const CheckReport report = check(state, AsOf::end(state));
    INFO(to_text(state, report));
    CHECK(report.clean());
    REQUIRE(report.lifts.size() == plan.lifts.size());
    for (const LiftReport& lift : report.lifts) CHECK(lift.under_share == 0);
    const auto worst = worst_pressure(state, 0, state.last);
    CHECK(worst->greatest.pressure <= wish.form_rating);
  }
}

TEST_CASE("the run sheet places all of the wall and moves every set of motors in time") {
  const PlannedPour plan = planned(wall());
  CHECK(plan.motors_a_row == 8);
  CHECK(plan.motors == 16);
  CHECK(plan.motors_unmoved == 32);
  CHECK(plan.plan.power.size() == 2);
  CHECK(in_cubic_metres(plan.concrete) == doctest::Approx(17.28));
  Length bottom;
  Seconds sum{};
  for (const LiftStep& step : plan.lifts) {
    CHECK(step.bottom == bottom);
    CHECK_FALSE(step.rows.empty());
    bottom = step.top;
    sum += step.takes();
  }
  CHECK(bottom == metres(4.8));
  CHECK(sum == plan.duration);
  CHECK(plan.uses.front().share >= plan.uses.back().share);
  for (const LimitUse& use : plan.uses) CHECK(use.share <= 1.0);
}

TEST_CASE("the slowest of wish, form, pressure and trucks sets the rise") {
  PlanWish wish = wall();
  CHECK(planned(wish).sets_rise == PlanLimit::rise_wished);
  wish.rise_limit = metres_per_hour(1.2);
  PlannedPour plan = planned(wish);
  CHECK(plan.sets_rise == PlanLimit::rise_given);
  CHECK(in_metres_per_hour(plan.rise) == doctest::Approx(1.08));
  wish = wall();
  wish.rise_wished = metres_per_hour(20);
  plan = planned(wish);
  CHECK(plan.sets_rise == PlanLimit::pressure);
  CHECK(plan.rise < *plan.rise_allowed);
  CHECK(plan.pressure < wish.form_rating);
  wish = wall();
  wish.trucks_per_hour = 0.5;
  check_refused(wish, "load-age", "a load is 3.00 m3 at the least");
  wish.haul = seconds(600);
  wish.trucks_per_hour = 0.8;
  plan = planned(wish);
  CHECK(plan.sets_rise == PlanLimit::trucks);
  CHECK(in_metres_per_hour(plan.rise) <= 0.8 * 6 / 3.6 + 1e-9);
}

TEST_CASE("loads that would grow old on the truck are ordered smaller") {
  PlanWish wish = wall();
  wish.load = cubic_metres(9);
  const PlannedPour plan = planned(wish);
  CHECK(plan.load < wish.load);
  wish.haul = seconds(600);
  wish.length = metres(40);
  CHECK(planned(wish).load == wish.load);
}

TEST_CASE("fewer motors than a calm leapfrog wants move in pauses, which lengthen the pour") {
  PlanWish wish = wall();
  wish.height = metres(3.0);
  wish.reach_z = metres(0.55);
  const PlannedPour calm = planned(wish);
  wish.motors_at_hand = calm.motors;
  CHECK(planned(wish).duration == calm.duration);
  wish.motors_at_hand = 7;
  check_refused(wish, "motors", "7 are at hand");
}

TEST_CASE("a plan that cannot work says which limit forbids it") {
  PlanWish wish = wall();
  wish.form_rating = kilopascals(29);
  check_refused(wish, "head", "29.0 kPa");
  wish.reach_z = metres(0.3);
  check_refused(wish, "pressure", "no rise is allowed");
  wish = wall();
  wish.mix.slump = metres(0.2);
  check_refused(wish, "pressure", "slump");
  wish = wall();
  wish.trucks_per_hour = 0.04;
  check_refused(wish, "knit", "trucks an hour");
  wish = wall();
  wish.mix.initial_set = hours(0.5);
  check_refused(wish, "knit", "sets after");
  wish = wall();
  wish.form_rating = kilopascals(40);
  wish.reach_pressure = metres(0.75);
  check_refused(wish, "knit", "ACI 347 allows 0.0");
  wish = wall();
  wish.hang_time = seconds(14000);
  wish.crew = 1;
  check_refused(wish, "crew", "1 hands");
  wish = wall();
  wish.haul = seconds(5300);
  check_refused(wish, "load-age", "88 min old");
  wish = wall();
  wish.inverter_amps = amperes(4);
  check_refused(wish, "power", "does not feed one motor");
  wish = wall();
  wish.motor.force = kilonewtons(0.06);
  wish.thickness = metres(1.0);
  check_refused(wish, "force", "too weak");
}

TEST_CASE("a small pier comes in one load of its own volume, and no load is a short one unasked") {
  PlanWish wish = wall();
  wish.kind = ElementKind::column;
  wish.length = wish.thickness = metres(0.6);
  wish.height = metres(2.5);
  const PlannedPour pier = planned(wish);
  REQUIRE(pier.loads.size() == 1);
  CHECK(in_cubic_metres(pier.loads.front().volume) == doctest::Approx(0.9));
  CHECK(pier.loads.front().volume == pier.load);
  // At the wished 1.5 m/h it would grow old: the rise is a guess of the planner's own.
  CHECK_FALSE(pier.forced.empty());
  CHECK(std::any_of(pier.guesses.begin(), pier.guesses.end(), [](const GuessTold& told) {
    return told.changed && told.guess == PlanGuess::rise;
  }));
  wish.given.rise = true;
  check_refused(wish, "load-age", "at the least");
  // What was given is kept, however small.
  wish.load = cubic_metres(0.4);
  wish.given.load = true;
  const PlannedPour small = planned(wish);
  CHECK(small.loads.size() == 3);
  CHECK(small.rise == wish.rise_wished);
}

TEST_CASE("a refusal tells what was tried, but nothing that was given") {
  PlanWish wish = wall();
  wish.mix.initial_set = hours(0.5);
  const auto tried = [&] { return plan_pour(wish).error().what.text(); };
  CHECK(tried().find("Tried in vain, too: loads down to 3.00 m3") != std::string::npos);
  CHECK(tried().find("a rise up to 4.00 m/h") != std::string::npos);
  wish.given = {true, true, true, true};
  CHECK(tried().find("Tried") == std::string::npos);
}

TEST_CASE("a wait is told as the least crew without it, or the motors where hands do not help") {
  PlanWish wish = wall();
  wish.hang_time = std::chrono::minutes(6);
  wish.crew = 1;
  wish.mix.initial_set = hours(12);
  wish.haul = std::chrono::minutes(5);
  const PlannedPour waits = planned(wish);
  REQUIRE(waits.waits > Seconds{});
  REQUIRE(waits.hands_no_wait);
  wish.crew = *waits.hands_no_wait;
  CHECK(planned(wish).waits == Seconds{});
  wish.crew -= 1;
  CHECK(planned(wish).waits > Seconds{});
}

TEST_CASE("where motors move in pauses, no crew helps: the motors that do are told") {
  // With a motor less than a calm leapfrog wants.
  std::mt19937 draw{7};
  int seen = 0;
  for (int i = 0; i < 400 && seen < 3; ++i) {
    PlanWish wish = random_wish(draw, Units::si);
    wish.motors_at_hand.reset();
    const auto calm = plan_pour(wish);
    if (!calm) continue;
    wish.motors_at_hand = calm->motors - 1;
    const auto few = plan_pour(wish);
    if (!few || few->waits <= Seconds{} || few->hands_no_wait) continue;
    ++seen;
    CHECK(few->motors < calm->motors);
    CHECK(few->motors_no_wait.value_or(0) > few->motors);
  }
  CHECK(seen == 3);
}

TEST_CASE("openings, bays of their own and batter go into the plan and its volumes") {
  PlanWish wish = wall();
  const PlannedPour whole = planned(wish);
  wish.openings = {{metres(2), metres(1), metres(3), metres(2)}};
  wish.bays = {metres(4), metres(3), metres(5)};
  wish.batter_deg = 3;
  const PlannedPour plan = planned(wish);
  CHECK(in_cubic_metres(whole.concrete - plan.concrete) == doctest::Approx(3 * 2 * 0.3));
  CHECK(plan.plan.elements.front().bays == wish.bays);
  CHECK(plan.plan.elements.front().openings == wish.openings);
  CHECK(plan.plan.elements.front().batter_deg == 3);
  const auto read = parse_plan(to_json(plan.plan), "plan");
  CHECK(read);
}

TEST_CASE("concrete colder or warmer than it may be placed is refused by that") {
  PlanWish wish = wall();
  wish.concrete = celsius(8);
  check_refused(wish, "temperature", "below");
  wish.concrete = celsius(36);
  check_refused(wish, "temperature", "above");
}

TEST_CASE("the plan it gives reads back from its own JSON") {
  PlanWish wish = wall();
  wish.both_sides = true;
  const PlannedPour plan = planned(wish);
  const auto read = parse_plan(to_json(plan.plan), "plan");
  REQUIRE_MESSAGE(read, (read ? std::string{} : to_text(read.error())));
  CHECK(read->elements.front().rows.size() == plan.plan.elements.front().rows.size());
  CHECK(read->elements.front().lifts == plan.plan.elements.front().lifts);
  CHECK(read->power == plan.plan.power);
}

TEST_CASE("what a plan cannot be opened with is refused, not planned") {
  auto wish = wall();
  wish.mix.set_reference = celsius(1e9);
  check_refused(wish, "set_ref_temp");
}

TEST_CASE("an inverter greater than any is refused by its field") {
  auto wish = wall();
  wish.inverter_amps = amperes(1e99);
  check_refused(wish, "max_amps");
}
