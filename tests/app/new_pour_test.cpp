// A pour opened by touch is kept in the book, as one event, before it is shown.
#include <doctest/doctest.h>

#include <filesystem>

#include "app/session.h"
#include "pour/log/log_entry.h"
#include "pour/planner/plan_draft.h"
#include "temp_folder.h"

using namespace rb;

namespace {

std::shared_ptr<const Plan> plan_named(const std::string& name) {
  PlanDraft draft = empty_plan(Units::si);
  draft.plan.name = name;
  add_element(draft);
  set_length(draft, 0, metres(6));
  set_height(draft, 0, metres(3));
  set_thickness(draft, 0, metres(0.3));
  const auto plan = finished(draft);
  REQUIRE(plan);
  return std::make_shared<const Plan>(*plan);
}

}  // namespace

TEST_CASE("a new pour is in the book when it is on the screen, under a name of its own") {
  const test::TempFolder folder;
  const auto file = folder.path / "pours.book";
  const Moment at = *parse_moment("2026-03-02T05:00:00.000Z");
  const auto clock = [&] { return Entry{at, Seconds{100}, "boot"}; };
  const auto plan = plan_named("Core wall");
  {
    auto session = Session::open(file, clock, std::chrono::minutes{0});
    REQUIRE_MESSAGE(session, (session ? "" : to_text(session.error())));
    Session& tablet = **session;
    CHECK(tablet.settle());
    CHECK(tablet.pour() == nullptr);
    CHECK(tablet.act({screens::OpenPour{plan, at}}));
    CHECK(tablet.settle());
    REQUIRE(tablet.pour() != nullptr);
    CHECK(tablet.pour()->pour == PourId{"2026-03-02-core-wall"});
    CHECK(*tablet.pour()->plan == *plan);
    CHECK(tablet.pour()->zero == at);
    CHECK(tablet.pour()->log[0].event.by == PersonId{"P1"});  // the plan's foreman
    // The same plan once more is another pour.
    CHECK(tablet.act({screens::LeavePour{}}));
    CHECK(tablet.act({screens::OpenPour{plan, at}}));
    CHECK(tablet.settle());
    CHECK(tablet.pour()->pour == PourId{"2026-03-02-core-wall-2"});
    CHECK(tablet.act({screens::KeepEvent{event::LiftStart{ElementId{"W1"}, 1}, at}}));
    CHECK_FALSE(tablet.look().trouble);
  }
  const auto book = Logbook::open(file, Access::read);
  REQUIRE(book);
  const auto pours = book->pours();
  REQUIRE(pours);
  REQUIRE(pours->size() == 2);
  CHECK((*pours)[0].count == 1);
  CHECK((*pours)[1].count == 2);
  CHECK(book->verify()->sound());
}
