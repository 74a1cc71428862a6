// A pour planned by touch: from nothing, and from yesterday's plan.
#include <doctest/doctest.h>

#include "tablet.h"
#include "words/sentence.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kMorning = *parse_moment("2026-03-02T05:00:00.000Z");

void press(Tablet& tablet, const std::string& letters) {
  for (const char c : letters) tablet.tap_id(std::string("key ") + c);
}

void figure(Tablet& tablet, const std::string& tile, const std::string& typed) {
  tablet.tap_id("plan " + tile);
  press(tablet, typed);
  tablet.tap("KEEP");
}

const Plan& opened(const Tablet& tablet) {
  return *tablet.state->plan;
}

}  // namespace

TEST_CASE("a wall is planned by touch from nothing, drawn as it is made, and its pour opened") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.in_pour = false;
  tablet.frame();
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  CHECK(tablet.says("has no name"));  // what is missing is said at once
  CHECK_FALSE(tablet.find_id("start")->target.enabled);
  tablet.tap_id("plan name");
  press(tablet, "WALL");
  tablet.tap("KEEP");
  CHECK(tablet.says("at least one element"));
  tablet.tap_id("plan add element");
  CHECK(tablet.says("the form is drawn here"));
  figure(tablet, "length", "12");
  CHECK(tablet.says("height"));
  figure(tablet, "height", "3");
  figure(tablet, "thickness", "0.25");
  CHECK_FALSE(tablet.says("the form is drawn here"));
  CHECK(tablet.says("5 \u00B7 2.50"));  // a lift's label (those that would crowd are left out)
  CHECK(tablet.says("GUESS"));
  figure(tablet, "form rating", "60");
  figure(tablet, "rise limit", "2.5");
  tablet.tap_id("plan bays");
  figure(tablet, "bays", "3");
  CHECK_FALSE(tablet.says("GUESS"));
  tablet.tap("BACK");
  tablet.tap_id("plan lifts");
  CHECK(tablet.says("GUESS"));
  tablet.tap("CONFIRM");
  CHECK_FALSE(tablet.says("GUESS"));
  tablet.tap("BACK");
  tablet.tap("BACK");
  CHECK(tablet.says("Guessed. Look, then confirm: mix, rows W1"));
  CHECK(tablet.find_id("start") == nullptr);  // not before the guesses are confirmed
  tablet.tap("CONFIRM");
  CHECK(tablet.says("The plan is whole"));
  const Moment before = tablet.now;
  tablet.tap("START");

  REQUIRE(tablet.in_pour);
  const auto* open = std::get_if<OpenPour>(&tablet.others.back());
  REQUIRE(open != nullptr);
  CHECK(open->at >= before);
  CHECK(between(open->at, tablet.now) < seconds(2));
  const Plan& plan = opened(tablet);
  CHECK(plan.name == "WALL");
  REQUIRE(plan.elements.size() == 1);
  const Element& wall = plan.elements[0];
  CHECK(in_metres(wall.length) == doctest::Approx(12));
  CHECK(in_metres(wall.thickness) == doctest::Approx(0.25));
  CHECK(in_kilopascals(*wall.form_rating) == doctest::Approx(60));
  CHECK(in_metres_per_hour(*wall.rise_limit) == doctest::Approx(2.5));
  CHECK(wall.bays.size() == 3);
  CHECK(wall.lifts.size() == 6);
  CHECK(wall.rows.size() == 3);
  // And it can be poured at once.
  tablet.tap("START LIFT 1");
  tablet.tap("The engineer agreed");  // no walk-down yet, nothing measured
  CHECK(tablet.state->placing(0) != nullptr);
  CHECK_FALSE(tablet.ui.drafts().plan);
}

TEST_CASE("yesterday's plan is copied: its name is confirmed or made new, the rest stands") {
  Tablet tablet(ready_pour(kMorning), kMorning + 24h);
  const Plan yesterday = opened(tablet);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap_id("plan copy P1");
  CHECK(tablet.says("Guessed. Look, then confirm: name"));
  SUBCASE("the name is confirmed") {
    tablet.tap("CONFIRM");
    tablet.tap("START");
    CHECK(opened(tablet) == yesterday);
    CHECK(tablet.taps == 5);
  }
  SUBCASE("the name is made new") {
    tablet.tap_id("plan name");
    for (int i = 0; i < 10; ++i) tablet.tap_id("key erase");
    tablet.tap_id("key B");
    tablet.tap("KEEP");
    tablet.tap("START");
    CHECK(opened(tablet).name == "B");
    CHECK(opened(tablet).elements == yesterday.elements);
  }
  CHECK(tablet.state->zero >= kMorning + 24h);
}

TEST_CASE("what is wrong is said at once, in place, and START waits for it to be mended") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap_id("plan copy P1");
  tablet.tap("CONFIRM");
  tablet.tap_id("plan element W1");
  tablet.tap_id("plan lifts");
  figure(tablet, "top of lift 2", "0.3");
  CHECK(tablet.says("tops must rise from one lift to the next"));
  tablet.tap("BACK");
  tablet.tap("BACK");
  CHECK_FALSE(tablet.find_id("start")->target.enabled);
  tablet.tap_id("plan element W1");
  tablet.tap_id("plan lifts");
  figure(tablet, "top of lift 2", "1.1");
  CHECK(tablet.says("The plan is whole"));
}

TEST_CASE("a plan half made outlives its panel, and is gone on with") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  tablet.tap_id("plan site");
  press(tablet, "QUAY");
  tablet.tap("KEEP");
  tablet.escape();
  tablet.frame();
  tablet.tap("NEW POUR");
  tablet.tap("GO ON");
  CHECK(tablet.says("QUAY"));
}

TEST_CASE("an element is taken out by a second tap only") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap_id("plan copy P1");
  tablet.tap_id("plan element W1");
  tablet.tap("REMOVE");
  tablet.tap_id("plan kind");  // anything else takes the question back
  CHECK(tablet.says("COLUMN"));
  tablet.tap("REMOVE");
  CHECK(tablet.find_id("plan length") != nullptr);
  tablet.tap("REMOVE?");
  CHECK(tablet.says("at least one element"));
}

TEST_CASE("in feet, figures are typed and shown in feet and kept in metres") {
  TabletSpec spec;
  spec.settings.units = Units::us;
  Tablet tablet(ready_pour(kMorning), kMorning + 1min, spec);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  tablet.tap_id("plan add element");
  tablet.tap_id("plan length");
  press(tablet, "40");
  tablet.tap_id("key '");
  press(tablet, "6");
  tablet.tap("KEEP");
  figure(tablet, "height", "10");
  figure(tablet, "thickness", "1");
  figure(tablet, "form rating", "1200");
  const Element& wall = tablet.ui.drafts().plan->draft.plan.elements[0];
  CHECK(in_feet(wall.length) == doctest::Approx(40.5));
  CHECK(in_feet(wall.height) == doctest::Approx(10));
  CHECK(in_psf(*wall.form_rating) == doctest::Approx(1200));
  CHECK(tablet.says("1200 psf"));
}

TEST_CASE(
    "rows and motors are computed by touch: what is missing is named, then it can be poured") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  tablet.tap_id("plan name");
  press(tablet, "WALL");
  tablet.tap("KEEP");
  tablet.tap_id("plan add element");
  figure(tablet, "length", "12");
  figure(tablet, "height", "4.8");
  figure(tablet, "thickness", "0.3");
  tablet.tap_id("plan rows");
  tablet.tap_id("plan compute");
  CHECK(tablet.says("To compute, give: form rating, motor's force, motor's amps"));
  CHECK_FALSE(tablet.find_id("compute")->target.enabled);
  tablet.tap("BACK");
  tablet.tap("BACK");
  figure(tablet, "form rating", "60");
  tablet.tap_id("plan rows");
  tablet.tap_id("plan compute");
  figure(tablet, "motor's force", "4");
  figure(tablet, "motor's amps", "4.2");
  CHECK(tablet.says("they stand as guesses"));
  tablet.tap_id("compute");
  CHECK(tablet.says("Rise 1.5 m/h, as wished"));
  CHECK(tablet.says("Licensed electrician"));
  // The sheet on paper: what was computed, in the pour's name.
  tablet.tap_id("paper");
  const auto* sheet = std::get_if<WriteSheet>(&tablet.others.back());
  REQUIRE(sheet != nullptr);
  CHECK(sheet->planned->plan.name == "WALL");
  CHECK(sheet->planned->lifts.size() > 1);
  CHECK(in_metres(sheet->wish->length) == 12);
  const PlanDraft made = tablet.ui.drafts().plan->draft;
  CHECK(made.plan.motor_type);
  // A change of what was asked takes the answer off the screen.
  figure(tablet, "hands to hang them", "4");
  CHECK_FALSE(tablet.says("Rise 1.5 m/h"));
  CHECK(tablet.find_id("paper") == nullptr);
  tablet.tap("BACK");
  CHECK(tablet.says("GUESS"));
  tablet.tap("BACK");
  tablet.tap("BACK");
  tablet.tap("CONFIRM");
  tablet.tap("START");
  REQUIRE(tablet.in_pour);
  CHECK(opened(tablet).elements[0].rows == made.plan.elements[0].rows);
  CHECK(opened(tablet).elements[0].lifts == made.plan.elements[0].lifts);
  tablet.tap("START LIFT 1");
  tablet.tap("The engineer agreed");  // no walk-down yet, nothing measured
  CHECK(tablet.state->placing(0) != nullptr);
}

TEST_CASE("a limit that forbids the plan is said, and what stood before stands") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.tap("ALL POURS");
  tablet.tap("NEW POUR");
  tablet.tap_id("plan copy P1");
  const Plan before = tablet.ui.drafts().plan->draft.plan;
  tablet.tap_id("plan element W1");
  figure(tablet, "form rating", "60");
  tablet.tap_id("plan rows");
  tablet.tap_id("plan compute");
  figure(tablet, "motor's force", "4");
  figure(tablet, "motor's amps", "4.2");
  figure(tablet, "rise wished", "0.05");
  tablet.tap_id("compute");
  const auto& answer = tablet.ui.drafts().plan->computed;
  REQUIRE(answer);
  REQUIRE_FALSE(*answer);
  const std::string told = words_of(answer->error(), Voice{});
  CHECK(told.find("knit:") != std::string::npos);  // the rule's code, for who writes scripts
  CHECK_FALSE(tablet.says("knit:"));               // none for who reads the tablet
  CHECK(tablet.says("it sets after"));
  CHECK(tablet.says("Wish a faster rise"));
  CHECK(tablet.ui.drafts().plan->draft.plan.elements[0].rows == before.elements[0].rows);
}

TEST_CASE("a round column is planned by its diameter, as one bay") {
  Tablet tablet(ready_pour(kMorning), kMorning + 1min);
  tablet.in_pour = false;
  tablet.frame();
  tablet.tap("NEW POUR");
  tablet.tap("EMPTY PLAN");
  tablet.tap_id("plan name");
  press(tablet, "PIER");
  tablet.tap("KEEP");
  tablet.tap_id("plan add element");
  tablet.tap_id("plan kind");
  tablet.tap_id("plan kind");
  CHECK(tablet.says("ROUND COLUMN"));
  CHECK(tablet.find_id("plan thickness") == nullptr);
  figure(tablet, "diameter", "0.9");
  figure(tablet, "height", "4.5");
  figure(tablet, "form rating", "90");
  tablet.tap("BACK");
  tablet.tap("CONFIRM");
  tablet.tap("START");
  const Element& pier = opened(tablet).elements.front();
  CHECK(pier.section == trade::Section::round);
  CHECK(in_metres(pier.thickness) == doctest::Approx(0.9));
  CHECK(pier.bays.size() == 1);
}
