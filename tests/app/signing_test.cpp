// Enrolling and signing: PINs tried are counted on the disk, what is open is accepted or named, and
// the commands do it without screens.
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <fstream>
#include <iterator>

#include "app/signing/pin_tries.h"
#include "app/signing/signing.h"
#include "cli/commands.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/signatures.h"
#include "sign/claim.h"
#include "temp_folder.h"

using namespace rb;

namespace {

constexpr sign::PinCost kCheap{1, 64};
const Moment kNow = *parse_moment("2026-03-02T16:00:00.000Z");
const SignedBook kBook{"a-book", {41, std::string(64, 'a')}};

const std::string kPourToSign =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P","plan":{)"
    R"("people":[{"id":"f1","name":"A. Reyes","role":"foreman"},)"
    R"({"id":"q1","name":"K. Lindqvist","role":"inspector"}],)"
    R"("mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":4,"height":3,"thickness":0.25,"lifts":[0.6],)"
    R"("rows":[{"id":"R1","side":"near","z":0.5,"serves":[1],)"
    R"("motors":[{"id":"M1","x":2,"reach_x":2,"reach_z":0.6}]}]}]}})"
    "\n"
    R"({"at":"2026-03-02T05:10:00.000Z","by":"f1","do":"lift-start","element":"W1","lift":1})"
    "\n"
    R"({"at":"2026-03-02T05:30:00.000Z","by":"f1","do":"lift-end","element":"W1","lift":1,"height":0.6})"
    "\n"
    R"({"at":"2026-03-02T06:00:00.000Z","by":"f1","do":"pour-close"})"
    "\n";

PourState closed_pour() {
  const auto script = read_script(kPourToSign, "p.jsonl");
  REQUIRE(script);
  return *fold(script->events);
}

sign::Pin pin(const char* digits) {
  auto read = sign::Pin::read(digits);
  REQUIRE(read);
  return *std::move(read);
}

void enrol(PourState& state, const char* person, const char* digits,
           std::optional<Witness> witness = {}) {
  const auto event =
      make_enrolment(state, {PersonId{person}, {}, std::move(witness), kCheap}, pin(digits), kNow);
  REQUIRE_MESSAGE(event, (event ? "" : to_text(event.error())));
  REQUIRE(admit(state, *event));
}

Review review(const PourState& state) {
  return review_of(state, check(state, AsOf::end(state)));
}

bool says(const std::string& text, const char* part) {
  CAPTURE(text);
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("wrong PINs are counted on the disk before they are tried, and slow down") {
  const test::TempFolder folder;
  const Path tries = folder.path / "data" / "pin-tries";
  PourState state = closed_pour();
  enrol(state, "f1", "204816");
  const PersonId foreman{"f1"};
  const Hex key = state.enrolments[0].what.key;
  for (int i = 0; i < 3; ++i) {
    const auto wrong = unlock(state, foreman, pin("204817"), tries, kNow);
    REQUIRE_FALSE(wrong);
    CHECK(says(to_text(wrong.error()), "is not the right one"));
  }
  struct stat is {};
  REQUIRE(stat(tries.c_str(), &is) == 0);
  CHECK((is.st_mode & 0777U) == 0600U);
  // The right one must wait, too; nothing but the file remembers.
  const auto early = unlock(state, foreman, pin("204816"), tries, after(kNow, seconds(29)));
  REQUIRE_FALSE(early);
  CHECK(says(to_text(early.error()), "the next try in 1 s"));
  CHECK(pin_wait(tries, key, kNow) == Seconds{30});
  CHECK_FALSE(unlock(state, foreman, pin("204817"), tries, after(kNow, seconds(30))));
  CHECK(pin_wait(tries, key, after(kNow, seconds(30))) == Seconds{60});
  CHECK(unlock(state, foreman, pin("204816"), tries, after(kNow, seconds(90))));
  CHECK(pin_wait(tries, key, kNow) <= Seconds{0});
}

TEST_CASE("where tries cannot be counted none is made") {
  const test::TempFolder folder;
  PourState state = closed_pour();
  enrol(state, "f1", "204816");
  const auto none = unlock(state, PersonId{"f1"}, pin("204816"), {}, kNow);
  REQUIRE_FALSE(none);
  CHECK(none.error().kind == Error::Kind::book);
  std::filesystem::create_directories(folder.path / "pin-tries");  // a folder in the way
  CHECK_FALSE(unlock(state, PersonId{"f1"}, pin("204816"), folder.path / "pin-tries", kNow));
  std::ofstream{folder.path / "cut"};  // an empty file was cut off: one wait for all
  const auto cut = unlock(state, PersonId{"f1"}, pin("204816"), folder.path / "cut", kNow);
  REQUIRE_FALSE(cut);
  CHECK(says(to_text(cut.error()), "the next try in"));
}

TEST_CASE("the foreman's PIN does not open the inspector's key, nor sign for the inspector") {
  const test::TempFolder folder;
  const Path tries = folder.path / "pin-tries";
  PourState state = closed_pour();
  enrol(state, "f1", "204816");
  auto foreman = unlock(state, PersonId{"f1"}, pin("204816"), tries, kNow);
  REQUIRE(foreman);
  enrol(state, "q1", "112358", Witness{PersonId{"f1"}, *foreman});
  CHECK_FALSE(unlock(state, PersonId{"q1"}, pin("204816"), tries, kNow));
  const Review open = review(state);
  SignWish wish{PersonId{"q1"}, event::Role::inspector, "accepted", {}, to_be_named(open)};
  const auto forged = make_signature(state, open, wish, *foreman, kBook, kNow);
  REQUIRE_FALSE(forged);
  CHECK(says(to_text(forged.error()), "is not the one of K. Lindqvist"));
}

TEST_CASE("what is open is accepted or named, else nothing is signed") {
  const test::TempFolder folder;
  PourState state = closed_pour();
  enrol(state, "f1", "204816");
  const auto key = unlock(state, PersonId{"f1"}, pin("204816"), folder.path / "t", kNow);
  REQUIRE(key);
  const Review open = review(state);
  REQUIRE_FALSE(to_be_named(open).empty());
  SignWish wish{PersonId{"f1"}, event::Role::foreman, "placed as logged", {}, {}};
  const auto silent = make_signature(state, open, wish, *key, kBook, kNow);
  REQUIRE_FALSE(silent);
  CHECK(says(to_text(silent.error()), "neither accepts nor names what was found"));
  wish.open = to_be_named(open);
  const auto named = make_signature(state, open, wish, *key, kBook, kNow);
  REQUIRE(named);
  CHECK(sign::holds(state.pour, *named));
  CHECK(std::get<event::Sign>(named->what).events == static_cast<int>(state.log.size()));
  for (const ReviewedGroup& group : open.groups) {
    Event accept{.at = kNow, .by = PersonId{"q1"}};
    accept.what = event::Accept{group.key, group.figures, "seen"};
    REQUIRE(admit(state, accept));
  }
  wish.open.clear();
  const auto clean = make_signature(state, review(state), wish, *key, kBook, kNow);
  REQUIRE(clean);
  REQUIRE(admit(state, *clean));
  CHECK(signatures_of(state).front().after == 0);
}

TEST_CASE("enrolled, signed and verified by commands; PINs come from files") {
  const test::TempFolder folder;
  const char* before = std::getenv("XDG_DATA_HOME");
  const std::string kept = before == nullptr ? "" : before;
  setenv("XDG_DATA_HOME", (folder.path / "home").c_str(), 1);
  const Path book = folder.path / "b.risebook";
  const Path script = folder.path / "p.jsonl";
  std::ofstream{script} << kPourToSign;
  std::ofstream{folder.path / "f1.pin"} << "204816\n";
  std::ofstream{folder.path / "q1.pin"} << "112358\n";
  std::ofstream{folder.path / "easy.pin"} << "123456\n";
  REQUIRE(run_replay(script, book) == Exit::fine);
  CHECK(run_enrol({book, "P", "f1", "foreman", {}, folder.path / "easy.pin", {}}) == Exit::usage);
  CHECK(run_enrol({book, "P", "f1", "foreman", {}, folder.path / "f1.pin", {}}) == Exit::fine);
  CHECK(run_enrol({book, "P", "q1", "inspector", {}, folder.path / "q1.pin", {}}) == Exit::usage);
  CHECK(run_enrol({book, "P", "q1", "inspector", "f1", folder.path / "q1.pin",
                   folder.path / "f1.pin"}) == Exit::fine);
  SignCommand sign{
      book, "P", "f1", "foreman", "placed as logged", {}, false, folder.path / "f1.pin"};
  CHECK(run_sign(sign) == Exit::usage);  // what is open is not named
  sign.name_open = true;
  sign.pin = folder.path / "q1.pin";
  CHECK(run_sign(sign) == Exit::usage);  // the inspector's PIN
  sign.pin = folder.path / "f1.pin";
  CHECK(run_sign(sign) == Exit::fine);
  CHECK(run_verify({book, {}, {}}) == Exit::fine);
  const auto open = Logbook::open(book, Access::read);
  REQUIRE(open);
  const auto looked = open->verify();
  REQUIRE(looked);
  CHECK(looked->people.size() == 1);
  if (before == nullptr) {
    unsetenv("XDG_DATA_HOME");
  } else {
    setenv("XDG_DATA_HOME", kept.c_str(), 1);
  }
}
