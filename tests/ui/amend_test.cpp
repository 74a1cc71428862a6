// The plan amended under way, by taps: a person, a row's height, a thickness; and what is refused.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kStart = *parse_moment("2026-03-02T05:00:00.000Z");

const event::Amend& last_amend(const Tablet& tablet) {
  const auto* amend = std::get_if<event::Amend>(&tablet.events.back().what);
  REQUIRE(amend != nullptr);
  return *amend;
}

// To the line of the list, page by page.
void open_line(Tablet& tablet, const std::string& id) {
  tablet.tap("MORE");
  tablet.tap_id("amend");
  for (int page = 0; page < 5 && tablet.find_id(id) == nullptr; ++page) {
    tablet.tap_id("amend page-down");
  }
  tablet.tap_id(id);
}

}  // namespace

TEST_CASE("a person comes to the pour: named, given a role, kept with a reason") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  open_line(tablet, "amend new person");
  tablet.type("K. Okoro");
  tablet.tap("KEEP");
  tablet.tap_id("amend role inspector");
  CHECK(tablet.says("K. Okoro, inspector"));
  tablet.tap("Other people on site");
  CHECK(last_amend(tablet).chosen == event::Chosen::other_people);
  const Person* person = tablet.state->plan->find(PersonId{"KOkoro"});
  REQUIRE(person != nullptr);
  CHECK(person->name == "K. Okoro");
  CHECK(person->role == "inspector");
  CHECK(tablet.says("Plan amended, person KOkoro: K. Okoro, inspector"));
}

TEST_CASE("a row is hung higher than planned: what it was stands beside what it is") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  const Length was = tablet.state->plan->elements[0].rows[0].z;
  open_line(tablet, "amend row R1 near");
  keys(tablet, "0.7");
  tablet.tap("KEEP");
  CHECK(tablet.says(" \u2192 0.70"));
  tablet.tap("As built on the form");
  CHECK(in_metres(tablet.state->plan->elements[0].rows[0].z) == doctest::Approx(0.7));
  REQUIRE(tablet.state->amends.size() == 1);
  CHECK(tablet.state->amends[0].was == fmt::format("{}", in_metres(was)));
}

TEST_CASE("a thickness is amended with a reason typed, and one that cannot be is kept nowhere") {
  Tablet tablet(ready_pour(kStart), kStart + 1min);
  open_line(tablet, "amend thickness");
  const std::size_t before = tablet.events.size();
  keys(tablet, "0");
  tablet.tap("KEEP");
  CHECK(tablet.find_id("why 0") == nullptr);
  CHECK(tablet.says("the plan as amended"));
  CHECK(tablet.events.size() == before);
  tablet.tap_id("key <");
  keys(tablet, "0.35");
  tablet.tap("KEEP");
  tablet.tap_id("why typed");
  tablet.type("FORM SET OUT WIDER");
  tablet.tap("KEEP");
  CHECK(last_amend(tablet).why == "FORM SET OUT WIDER");
  CHECK(in_metres(tablet.state->plan->elements[0].thickness) == doctest::Approx(0.35));
}
