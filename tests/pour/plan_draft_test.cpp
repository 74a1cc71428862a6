#include "pour/planner/plan_draft.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "pour/log/event_json.h"

using namespace rb;

namespace {

PlanDraft wall(double length, double height, double thickness = 0.3) {
  PlanDraft draft = empty_plan(Units::si);
  draft.plan.name = "Wall";
  add_element(draft);
  set_length(draft, 0, metres(length));
  set_height(draft, 0, metres(height));
  set_thickness(draft, 0, metres(thickness));
  return draft;
}

bool is_open(const PlanDraft& draft, Guessed what) {
  const auto open = open_guesses(draft);
  return std::any_of(open.begin(), open.end(), [&](const OpenGuess& g) { return g.what == what; });
}

}  // namespace

TEST_CASE("an empty plan says what is missing, one thing at a time, until it is whole") {
  PlanDraft draft = empty_plan(Units::si);
  auto plan = finished(draft);
  REQUIRE_FALSE(plan);
  CHECK(to_text(plan.error()) == "the plan: has no name. Name the pour.");
  draft.plan.name = "Trial";
  plan = finished(draft);
  REQUIRE_FALSE(plan);
  CHECK(plan.error().what.text().find("at least one element") != std::string::npos);
  add_element(draft);
  plan = finished(draft);
  REQUIRE_FALSE(plan);
  CHECK(to_text(plan.error()).find("length") != std::string::npos);
  set_length(draft, 0, metres(6));
  set_height(draft, 0, metres(3));
  set_thickness(draft, 0, metres(0.3));
  CHECK(finished(draft));
}

TEST_CASE("bays, lifts and rows are guessed from the sizes and marked until they are confirmed") {
  PlanDraft draft = wall(12.0, 3.0);
  const Element& w = draft.plan.elements[0];
  CHECK(w.bays.size() == 4);
  CHECK(w.lifts.size() == 6);
  CHECK(in_metres(w.lifts[0]) == doctest::Approx(0.5));
  REQUIRE(w.rows.size() == 3);  // 0.45, 1.45 and 2.45 m reach 3.05 m
  CHECK(in_metres(w.rows[2].z) == doctest::Approx(2.45));
  CHECK(w.rows[0].motors.size() == 10);
  CHECK(w.rows[0].serves == std::vector<int>{1, 2, 3});
  for (const Guessed what : {Guessed::bays, Guessed::lifts, Guessed::rows, Guessed::mix}) {
    CHECK(is_open(draft, what));
  }
  confirm(draft, {Guessed::bays, 0});
  CHECK_FALSE(is_open(draft, Guessed::bays));
  set_height(draft, 0, metres(3.2));  // the bays are not touched by it
  CHECK_FALSE(is_open(draft, Guessed::bays));
  set_length(draft, 0, metres(10));
  CHECK(is_open(draft, Guessed::bays));
  confirm_all(draft);
  CHECK(open_guesses(draft).empty());
}

TEST_CASE("what is guessed for any size is a plan the reader takes, with every spot in reach") {
  std::mt19937 dice(7);
  std::uniform_real_distribution<double> along(0.3, 60), up(0.3, 12), thick(0.1, 1.5);
  for (int i = 0; i < 300; ++i) {
    const auto mm = [](double v) { return std::round(v * 1000) / 1000; };
    PlanDraft draft = wall(mm(along(dice)), mm(up(dice)), mm(thick(dice)));
    if (i % 3 == 1) set_kind(draft, 0, ElementKind::column);
    if (i % 3 == 2) set_kind(draft, 0, ElementKind::deck);
    const auto plan = finished(draft);
    CAPTURE(i);
    REQUIRE_MESSAGE(plan, (plan ? "" : to_text(plan.error())));
    const Element& e = plan->elements[0];
    // Bays are whole millimetres; the last takes what rounding left.
    const double rounding = 0.0005 * static_cast<double>(e.bays.size()) + 1e-9;
    for (const Length& bay : e.bays) CHECK(in_metres(bay) <= 3.0 + rounding);
    Length below;
    for (const Length& top : e.lifts) {
      CHECK(top - below <= metres(0.502));
      below = top;
    }
    CHECK(e.lifts.back() == e.rise_height());
    if (e.kind == ElementKind::deck) {
      CHECK(e.rows.empty());
      continue;
    }
    // Up the form and along it no gap is left between what one motor reaches and the next.
    Length covered;
    for (const Row& row : e.rows) {
      CHECK(row.z - row.motors[0].reach_z <= covered + metres(0.001));
      covered = row.z + row.motors[0].reach_z;
      Length along_row;
      for (const Motor& motor : row.motors) {
        CHECK(motor.x - motor.reach_x <= along_row + metres(0.002));
        along_row = motor.x + motor.reach_x;
      }
      CHECK(along_row >= e.length - metres(0.002));
    }
    CHECK(covered >= e.rise_height());
  }
}

TEST_CASE("what is entered by hand is no guess, and the rest of the plan follows it") {
  PlanDraft draft = wall(12.0, 3.0);
  set_bay(draft, 0, 0, metres(2.0));  // the last bay takes up the difference
  const Element& w = draft.plan.elements[0];
  CHECK(in_metres(w.bays[3]) == doctest::Approx(4.0));
  CHECK_FALSE(is_open(draft, Guessed::bays));
  set_lift_count(draft, 0, 3);
  CHECK(w.lifts.size() == 3);
  CHECK(w.rows[0].serves == std::vector<int>{1, 2});  // reaches 1.05 m; lifts end at 1 and 2 m
  set_row_height(draft, 0, 0, metres(0.2));
  CHECK(w.rows[0].serves == std::vector<int>{1});
  RowPattern pattern;
  pattern.both_sides = true;
  pattern.motors = 4;
  set_pattern(draft, 0, pattern);
  CHECK(w.rows.size() == 6);
  CHECK(w.rows[1].side == Side::far_side);
  CHECK(w.rows[1].motors.size() == 4);
  CHECK(finished(draft));
  set_bay(draft, 0, 3, metres(1.0));  // nobody takes up the last bay's difference
  const auto wrong = finished(draft);
  REQUIRE_FALSE(wrong);
  CHECK(wrong.error().what.text().find("add up to 9 m") != std::string::npos);
}

TEST_CASE("a copy is the whole plan; only its name waits") {
  PlanDraft draft = wall(12.0, 3.0);
  confirm_all(draft);
  draft.plan.elements[0].openings.push_back({metres(1), metres(1), metres(1), metres(1)});
  const Plan yesterday = *finished(draft);
  PlanDraft copy = copy_of(yesterday);
  CHECK(copy.plan == yesterday);
  CHECK(open_guesses(copy) == std::vector<OpenGuess>{{Guessed::name, 0}});
  // Its pattern is read off its rows: made anew by it, they are the same.
  set_pattern(copy, 0, copy.guesses[0].pattern);
  CHECK(copy.plan.elements[0].rows == yesterday.elements[0].rows);
}

TEST_CASE("elements, mixes and people get names of their own") {
  PlanDraft draft = wall(6, 3);
  add_element(draft);
  CHECK(draft.plan.elements[1].id == ElementId{"W2"});
  remove_element(draft, 0);
  add_element(draft);
  CHECK(draft.plan.elements[1].id == ElementId{"W1"});
  add_mix(draft);
  add_person(draft);
  CHECK(draft.plan.mixes[0].id != draft.plan.mixes[1].id);
  CHECK(draft.plan.people[0].id != draft.plan.people[1].id);
}

TEST_CASE("a pour's id is its day and its name in plain letters, never one that is taken") {
  CHECK(new_pour_id("Core wall CW2, L14", "2026-03-02", {}) ==
        PourId{"2026-03-02-core-wall-cw2-l14"});
  CHECK(new_pour_id("\u00D1", "2026-03-02", {}) == PourId{"2026-03-02"});
  CHECK(new_pour_id("A", "2026-03-02", {PourId{"2026-03-02-a"}, PourId{"2026-03-02-a-2"}}) ==
        PourId{"2026-03-02-a-3"});
}

namespace {

PlanDraft computable() {
  PlanDraft draft = wall(12.0, 4.8);
  draft.plan.elements[0].form_rating = kilopascals(60);
  draft.wish.motor.force = kilonewtons(4);
  draft.wish.motor.amps = amperes(4.2);
  return draft;
}

}  // namespace

TEST_CASE("rows and lifts are computed by the planner, stand as guesses and make a whole plan") {
  PlanDraft draft = computable();
  draft.wish.inverter_amps = amperes(40);
  set_bay_count(draft, 0, 5);
  confirm_all(draft);
  const auto planned = compute(draft, 0);
  REQUIRE_MESSAGE(planned, (planned ? std::string{} : to_text(planned.error())));
  const Element& w = draft.plan.elements[0];
  CHECK(w.rows == planned->plan.elements[0].rows);
  CHECK(w.lifts == planned->plan.elements[0].lifts);
  CHECK(w.bays.size() == 5);
  CHECK(draft.plan.motor_type == draft.wish.motor);
  CHECK(draft.plan.power == planned->plan.power);
  CHECK_FALSE(draft.plan.power.empty());
  CHECK(open_guesses(draft) == std::vector<OpenGuess>{{Guessed::lifts, 0}, {Guessed::rows, 0}});
  CHECK(finished(draft));
  // Copied the next day, the planner is asked with the motor and feed of the day before.
  const PlanDraft next = copy_of(draft.plan);
  CHECK(next.wish.motor == draft.wish.motor);
  CHECK(next.wish.inverter_amps == draft.wish.inverter_amps);
}

TEST_CASE("a plan that a limit forbids, or without its motor, leaves the draft as it was") {
  PlanDraft draft = computable();
  draft.plan.mixes[0].initial_set = hours(0.5);  // no joint is knitted in that
  const PlanDraft before = draft;
  const auto refused = compute(draft, 0);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().kind == Error::Kind::refused);
  CHECK(draft == before);
  draft = computable();
  draft.wish.motor.force = {};
  CHECK_FALSE(compute(draft, 0));
}

TEST_CASE("the mix asked about is the one chosen, and half a cord is none") {
  PlanDraft draft = computable();
  add_mix(draft);
  draft.plan.mixes[1].initial_set = hours(9);
  CHECK(wish_for(draft, 0).mix.id == draft.plan.mixes[0].id);
  draft.wish.mix.id = draft.plan.mixes[1].id;
  CHECK(in_hours(wish_for(draft, 0).mix.initial_set) == doctest::Approx(9));
  draft.wish.cable = Cable{square_metres(4e-6), {}};
  CHECK_FALSE(wish_for(draft, 0).cable);
  draft.wish.cable->length = metres(25);
  CHECK(wish_for(draft, 0).cable);
}

TEST_CASE("a second element's smaller feed leaves the first one's standing") {
  PlanDraft draft = computable();
  draft.wish.inverter_amps = amperes(40);
  REQUIRE(compute(draft, 0));
  const auto power = draft.plan.power;
  add_element(draft);
  set_length(draft, 1, metres(2.4));
  set_height(draft, 1, metres(3));
  set_thickness(draft, 1, metres(0.3));
  draft.plan.elements[1].form_rating = kilopascals(60);
  draft.wish.load = cubic_metres(0.5);  // so little a wall takes no truck's load in time
  REQUIRE(compute(draft, 1));
  CHECK(draft.plan.power == power);
  // Asked for another feed, or for none, the old one does not stand.
  draft.wish.inverter_amps = amperes(25);
  REQUIRE(compute(draft, 1));
  CHECK(in_amperes(draft.plan.power.front().max_amps) == doctest::Approx(25));
  draft.wish.inverter_amps.reset();
  REQUIRE(compute(draft, 1));
  CHECK(draft.plan.power.empty());
}

TEST_CASE("what the planner takes for granted is not written into the plan as given") {
  PlanDraft draft = computable();
  REQUIRE(compute(draft, 0));
  CHECK_FALSE(draft.plan.elements[0].form_mass);
}

TEST_CASE("going through a round section gives a flat one its thickness and openings back") {
  PlanDraft draft = empty_plan(Units::si);
  add_element(draft);
  set_length(draft, 0, metres(12));
  set_height(draft, 0, metres(3.6));
  set_thickness(draft, 0, metres(0.3));
  const std::vector<Patch> openings{{metres(1), metres(1), metres(1), metres(1)}};
  draft.plan.elements[0].openings = openings;
  set_kind(draft, 0, ElementKind::column);
  set_section(draft, 0, trade::Section::round);
  CHECK(draft.plan.elements[0].thickness == metres(12));
  CHECK(draft.plan.elements[0].openings.empty());
  set_kind(draft, 0, ElementKind::deck);
  CHECK(draft.plan.elements[0].thickness == metres(0.3));
  CHECK(draft.plan.elements[0].openings == openings);
  CHECK(draft.plan.elements[0].section == trade::Section::rect);
  // Deep down it is one layer: lifts are made by the thickness that came back.
  CHECK(draft.plan.elements[0].lifts == std::vector<Length>{metres(0.3)});
}
