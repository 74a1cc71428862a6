// Keys made and a pour signed by taps on the real screens, over a real book: what is asked for
// comes to the book once, and only where the PIN is right and the book stands still.
#include "app/signing/carried_keys.h"
#include "cli/write_day.h"
#include "glass.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"

using namespace rb;
using namespace rb::test;

namespace {

std::string demo_script() {
  return demo_without({"sign"});
}
const Moment kEvening = *parse_moment("2026-03-02T17:00:00.000Z");

const Person& person_of(const PourState& state, const char* role) {
  for (const Person& person : state.plan->people) {
    if (person.has_role(role)) return person;
  }
  FAIL("nobody is ", role);
  return state.plan->people.front();
}

void enrol(Glass& glass, const char* role, const std::string& digits,
           const std::string& witness = {}, const std::string& witness_pin = {}) {
  const std::string who = person_of(glass.state(), role).id.text;
  glass.tap("sign " + who + " " + role);
  if (!witness.empty()) {
    glass.tap("witness " + witness);
    glass.pin(witness_pin);
  }
  glass.pin(digits);
  glass.pin(digits);
  REQUIRE(glass.comes("The PIN is kept."));
}

}  // namespace

TEST_CASE("by taps: two people enrol, the second before a witness, and sign; each once") {
  Glass glass(demo_script(), kEvening);
  glass.open();
  const PourState& state = glass.state();
  const std::string foreman = person_of(state, "foreman").id.text;
  const std::string inspector = person_of(state, "inspector").id.text;
  glass.tap("more");
  glass.tap("sign");
  enrol(glass, "foreman", "204816");
  CHECK(state.enrolments.size() == 1);
  CHECK(state.enrolments[0].what.witness.empty());
  // On to sign: two causes nobody accepted are named as open.
  glass.tap("sign on");
  REQUIRE(glass.find("verdict 0") != nullptr);
  CHECK_FALSE(glass.find("verdict 0")->target.enabled);
  glass.tap("verdict 1");
  glass.pin("204817");
  REQUIRE(glass.comes("is not the right one"));
  CHECK(state.signs.empty());
  glass.tap("sign on");
  glass.pin("204816");
  REQUIRE(glass.comes("Signed."));
  REQUIRE(state.signs.size() == 1);
  glass.tap("back");
  // The inspector's key wants the foreman's PIN as a witness.
  enrol(glass, "inspector", "771305", foreman, "204816");
  CHECK(state.enrolments.back().what.witness.text == foreman);
  glass.tap("sign on");
  glass.tap("sign comment");
  glass.type("bay 3 to be cored");
  glass.tap("keep");
  glass.tap("verdict 2");
  glass.pin("204816");  // the foreman's: refused for the inspector
  REQUIRE(glass.comes("is not the right one"));
  glass.tap("sign on");
  glass.pin("771305");
  REQUIRE(glass.comes("Signed."));
  REQUIRE(glass.session->settle());
  const auto made = signatures_of(state);
  REQUIRE(made.size() == 2);
  CHECK(made[0].by.text == foreman);
  CHECK(made[1].by.text == inspector);
  CHECK(made[0].unsettled == 0);
  const auto& sign = std::get<event::Sign>(state.log[made[1].ref].event.what);
  CHECK(sign.verdict == "not accepted");
  CHECK(sign.comment == "bay 3 to be cored");
  CHECK_FALSE(sign.open.empty());
  // What was signed holds in the book, looked at from outside.
  glass.session.reset();
  CHECK(people_who_signed(glass.book) == 2);
}

TEST_CASE("the two PINs typed differ: nothing is made, and both are asked for again") {
  Glass glass(demo_script(), kEvening);
  glass.open();
  glass.tap("more");
  glass.tap("sign");
  glass.tap("sign " + person_of(glass.state(), "foreman").id.text + " foreman");
  glass.pin("204816");
  glass.pin("204861");
  CHECK(glass.says("The two were not the same"));
  CHECK(glass.state().enrolments.empty());
  glass.pin("111111");  // guessed first
  glass.pin("111111");
  REQUIRE(glass.comes("guessed first"));
  CHECK(glass.state().enrolments.empty());
}

TEST_CASE("a key is carried to the next pour of the same person, with the witness it had") {
  Glass glass(demo_script(), kEvening);
  glass.open();
  glass.tap("more");
  glass.tap("sign");
  enrol(glass, "foreman", "204816");
  const PourId first = glass.pour;
  glass.session.reset();
  // The next pour in the same book, of the same plan.
  std::string second = demo_script();
  for (std::size_t at = 0; (at = second.find(first.text, at)) != std::string::npos;) {
    second.replace(at, first.text.size(), first.text + "-2");
    at += first.text.size() + 2;
  }
  auto read = read_script(second, "second");
  REQUIRE_MESSAGE(read, (read ? "" : to_text(read.error())));
  {
    auto book = Logbook::open(glass.book, Access::write);
    REQUIRE(book);
    REQUIRE(book->append_script(*read, {glass.now, glass.now.time_since_epoch(), "boot"}));
  }
  glass.pour = read->pour;
  glass.open();
  REQUIRE(glass.state().pour == read->pour);
  glass.ui.drafts() = {};
  glass.frame();
  glass.tap("more");
  glass.tap("sign");
  REQUIRE(glass.comes("has a PIN from an earlier pour"));
  glass.tap("sign " + person_of(glass.state(), "foreman").id.text + " foreman");
  glass.tap("verdict 1");
  glass.pin("204816");
  REQUIRE(glass.comes("Signed."));
  const PourState& state = glass.state();
  REQUIRE(state.enrolments.size() == 1);
  CHECK(state.enrolments[0].what.from == first);
  REQUIRE(state.signs.size() == 1);
  REQUIRE(glass.session->settle());
  glass.session.reset();
  CHECK(people_who_signed(glass.book) == 1);
}

TEST_CASE("the record of a day is made by taps; a day without a pour is said to be empty") {
  Glass glass(demo_script(), kEvening);
  glass.open({.record = [](const Path& book, const screens::MakeRecord& wish,
                           const Path& folder) -> Result<std::string> {
    const auto opened = Logbook::open(book, Access::read);
    if (!opened) return Failed{opened.error()};
    const auto made =
        write_day(*opened, plain_day(wish.day, wish.voice.utc_offset), folder, {Format::json});
    if (!made) return Failed{made.error()};
    return made->files.front().string();
  }});
  glass.tap("more");
  glass.tap("record");
  glass.tap("record now");
  REQUIRE(glass.comes("Made: "));
  CHECK(std::filesystem::exists(glass.folder.path / "records"));
  CHECK_FALSE(std::filesystem::is_empty(glass.folder.path / "records"));
  glass.tap("day before");
  glass.tap("record now");
  REQUIRE(glass.comes("NOT MADE: "));
  CHECK(glass.says("nothing was logged on 2026-03-01"));
}

TEST_CASE("a run nobody logged is entered an hour later, in twelve taps at most") {
  Glass glass(demo_script(), *parse_moment("2026-03-02T07:00:00.000Z"));
  glass.open();
  const std::size_t before = glass.state().runs.size();
  const std::size_t notes = glass.state().notes.size();
  glass.taps = 0;
  std::string row;
  for (const screens::SeenTarget& target : glass.ui.probe().targets) {
    if (target.target.id.starts_with("row-info ")) row = target.target.id;
  }
  REQUIRE_FALSE(row.empty());
  glass.tap(row);
  glass.tap("ran earlier");
  glass.tap("ran from");
  for (const char* key : {"key 0", "key 6", "key 0", "key 2"}) glass.tap(key);
  glass.tap("keep");
  glass.tap("next");
  glass.tap("why 0");
  CHECK(glass.taps <= 12);
  const PourState& state = glass.state();
  REQUIRE(state.runs.size() == before + 1);
  const Moment from = *parse_moment("2026-03-02T06:02:00.000Z");
  const bool there = std::any_of(state.runs.begin(), state.runs.end(), [&](const RunState& run) {
    return state.moment(run.from) == from && run.to && *run.to - run.from == seconds(90);
  });
  CHECK(there);
  CHECK(state.notes.size() == notes + 1);
  CHECK(glass.session->settle());
}

TEST_CASE("a ticket's number is put right in all taps of its load, and a wrong volume in its own") {
  Glass glass(demo_script(), kEvening);
  glass.open();
  const PourState& state = glass.state();
  const TicketId old = state.trucks.front().ticket;
  const std::size_t trucks = state.trucks.size();
  const auto open_first_truck = [&] {
    glass.ui.drafts() = {};
    for (EventRef ref = 0; ref < state.log.size(); ++ref) {
      const Event& event = state.log[ref].event;
      const auto* truck = std::get_if<event::Truck>(&event.what);
      if (truck == nullptr || truck->ticket != state.trucks.front().ticket) continue;
      screens::CorrectDraft draft;
      draft.target = event.id;
      draft.at = event.at;
      draft.what = event.what;
      glass.ui.drafts().dialog = draft;
      break;
    }
    glass.frame();
  };
  open_first_truck();
  glass.tap("correct field 2");
  glass.type("9001");
  glass.tap("keep");
  glass.tap("why 4");
  CHECK(state.trucks.size() == trucks);
  CHECK(state.trucks.front().ticket == TicketId{"9001"});
  CHECK(std::none_of(state.trucks.begin(), state.trucks.end(),
                     [&](const TruckState& truck) { return truck.ticket == old; }));
  open_first_truck();
  glass.tap("correct field 3");
  for (const char* key : {"key 5", "key .", "key 5"}) glass.tap(key);
  glass.tap("keep");
  glass.tap("why 4");
  bool there = false;
  for (const LogEntry& entry : state.log) {
    const auto* truck = std::get_if<event::Truck>(&entry.event.what);
    there = there || (truck != nullptr && truck->ticket == TicketId{"9001"} &&
                      truck->volume == cubic_metres(5.5));
  }
  CHECK(there);
  CHECK(glass.session->settle());
}
