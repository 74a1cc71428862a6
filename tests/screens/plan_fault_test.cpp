#include <doctest/doctest.h>

#include "pour/plan/plan_json.h"
#include "screens/plan/plan_fields.h"

using namespace rb;
using namespace rb::screens;

namespace {

// What the plan screen says of a draft, in the language of that code.
std::string told_of(const PlanDraft& draft, const char* code) {
  const auto language = Language::of_code(code);
  REQUIRE(language);
  const Say say{*language, Units::si, {}};
  const auto whole = finished(draft);
  REQUIRE_FALSE(whole);
  return fault_words(say, draft, whole.error());
}

PlanDraft a_wall() {
  PlanDraft draft = empty_plan(Units::si);
  draft.plan.name = "North wall";
  for (Person& person : draft.plan.people) person.name = "Ana";
  add_element(draft);
  set_length(draft, 0, metres(6));
  set_height(draft, 0, metres(3));
  set_thickness(draft, 0, metres(0.3));
  return draft;
}

}  // namespace

TEST_CASE("a plan's fault is a sentence about the tile it is mended on") {
  PlanDraft draft = a_wall();
  const std::string wall = draft.plan.elements[0].id.text;
  draft.plan.elements[0].form_rating = kilopascals(-5);
  CHECK(told_of(draft, "en") ==
        wall + " \u00B7 form rating: -5\u00A0kPa stands there; type 1\u00A0kPa to 2000\u00A0kPa");
  CHECK(told_of(draft, "es").starts_with(wall + " \u00B7 capacidad de la cimbra: dice -5"));
}

TEST_CASE("a limit under another is told by the tiles' names") {
  PlanDraft draft = a_wall();
  draft.plan.limits.dose_min = {seconds(90), LimitFrom::plan};
  draft.plan.limits.dose_max = {seconds(30), LimitFrom::plan};
  CHECK(told_of(draft, "en") == "vibration, most: less than the least vibration");
  CHECK(told_of(draft, "es") == "vibrado m\u00E1ximo: menos que el vibrado m\u00EDnimo");
}

TEST_CASE("no fault of a plan's figures tells a script's name of a field") {
  const auto spoiled = [](auto spoil) {
    PlanDraft draft = a_wall();
    spoil(draft.plan);
    return draft;
  };
  const std::vector<PlanDraft> faults{
      spoiled([](Plan& p) { p.elements[0].strip_after = seconds(-1); }),
      spoiled([](Plan& p) { p.elements[0].rise_limit = metres_per_hour(-1); }),
      spoiled([](Plan& p) { p.elements[0].joint_age_max = seconds(-1); }),
      spoiled([](Plan& p) { p.elements[0].thickness = metres(-1); }),
      spoiled([](Plan& p) { p.mixes[0].initial_set = seconds(-1); }),
      spoiled([](Plan& p) { p.mixes[0].slump = metres(-1); }),
      spoiled([](Plan& p) {
        p.limits.temp_max = {celsius(1), LimitFrom::plan};
      }),
      spoiled([](Plan& p) { p.elements[0].lifts.back() = metres(40); }),
  };
  for (const PlanDraft& draft : faults) {
    for (const char* code : {"en", "es"}) {
      const std::string words = told_of(draft, code);
      CAPTURE(words);
      CHECK(words.find('_') == std::string::npos);
      CHECK(words.find('[') == std::string::npos);
      CHECK(words.find("field") == std::string::npos);
      CHECK(words.find("campo") == std::string::npos);
    }
  }
}
