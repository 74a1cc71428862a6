// A book that could not be opened, and a clock that looks wrong: said over everything, with ways
// on.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "pour/plan/most.h"
#include "screens/book/clock_question.h"
#include "screens/book/failure_screen.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

const Moment kTroubledDay = *parse_moment("2026-03-02T05:00:00.000Z");

template <class Wish>
bool wanted(const Tablet& tablet) {
  for (const Intent& intent : tablet.others) {
    if (std::holds_alternative<Wish>(intent)) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("a book that is not opened says why and what to do, in either language") {
  for (const Language language : Language::all()) {
    for (int i = 0; i <= static_cast<int>(BookTrouble::many_names); ++i) {
      const auto trouble = static_cast<BookTrouble>(i);
      CAPTURE(i);
      Tablet tablet{ready_pour(kTroubledDay), kTroubledDay, {.settings = {.language = language}}};
      tablet.ui.drafts().failure =
          FailureDraft{trouble, "/x/pours.risebook", "words of the system", true};
      tablet.frame();
      CHECK(tablet.says(word(language, failure_word(trouble))));
      CHECK(tablet.says(word(language, failure_advice(trouble))));
      CHECK(tablet.says("/x/pours.risebook"));
      CHECK(tablet.says("words of the system"));
    }
  }
}

TEST_CASE("each trouble has words of its own") {
  for (int i = 0; i <= static_cast<int>(BookTrouble::many_names); ++i) {
    for (int j = 0; j < i; ++j) {
      CHECK(failure_word(static_cast<BookTrouble>(i)) != failure_word(static_cast<BookTrouble>(j)));
    }
  }
}

TEST_CASE("from a failure one may leave, try again, or read where that may do; nothing else") {
  Tablet tablet{ready_pour(kTroubledDay), kTroubledDay, {}};
  const auto fail_with = [&](bool may_read) {
    tablet.others.clear();
    tablet.ui.drafts().failure = FailureDraft{BookTrouble::disk_full, "f", "t", may_read};
    tablet.frame();
  };
  fail_with(true);
  CHECK(tablet.written().size() == 3);
  tablet.tap_id("try again");
  CHECK(wanted<TryAgain>(tablet));
  fail_with(true);
  tablet.tap_id("open for reading");
  CHECK(wanted<OpenForReading>(tablet));
  fail_with(true);
  tablet.tap_id("quit now");
  CHECK(wanted<Quit>(tablet));
  fail_with(false);
  CHECK(tablet.find_id("open for reading") == nullptr);
  tablet.escape();
  tablet.frame();
  CHECK(tablet.find_id("try again") != nullptr);  // Escape does not put it away
  CHECK(tablet.wanted == 0);
}

TEST_CASE("the clock is asked about over the pour; nothing is kept until it is answered") {
  Tablet tablet{ready_pour(kTroubledDay), kTroubledDay, {}};
  tablet.ui.drafts().clock =
      ClockQuestion{ClockDoubt::behind_book, after(kTroubledDay, seconds(900000))};
  tablet.frame();
  CHECK(tablet.says("Is the tablet's clock right?"));
  CHECK(tablet.says("2026-03-02"));
  CHECK(tablet.says("2026-03-12"));
  CHECK(tablet.written().size() == 2);
  tablet.escape();
  tablet.frame();
  CHECK(tablet.says("Is the tablet's clock right?"));
  tablet.tap_id("clock right");
  CHECK(wanted<ClockIsRight>(tablet));
  CHECK_FALSE(wanted<Quit>(tablet));
  tablet.tap_id("quit now");
  CHECK(wanted<Quit>(tablet));
}

TEST_CASE("a tap from a script says so where it stands, and its pour in the list") {
  auto events = ready_pour(kTroubledDay);
  Event note;
  note.at = kTroubledDay;
  note.by = PersonId{"f1"};
  note.what = event::Note{"brought", {}, {}};
  note.id = EventId{"n1"};
  note.entry = script_entry(Entry{kTroubledDay, kTroubledDay.time_since_epoch(), "boot"});
  events.push_back(note);
  Tablet tablet{events, kTroubledDay + std::chrono::minutes{5}, {}};  // past TAKE BACK
  CHECK(tablet.says("from a script"));
  CHECK(make_pour_card(*tablet.state).from_script);
}

TEST_CASE("the keys stop at the longest text") {
  const std::string full(most::kTextLetters, 'x');
  Tablet tablet{ready_pour(kTroubledDay), kTroubledDay, {}};
  tablet.ui.drafts().dialog = TypeDraft{.text = full, .at = kTroubledDay};
  tablet.frame();
  tablet.type("y");
  tablet.tap_id("key A");
  const auto* draft = std::get_if<TypeDraft>(&tablet.ui.drafts().dialog);
  REQUIRE(draft != nullptr);
  CHECK(draft->text == full);
  tablet.tap_id("key erase");
  tablet.type("\u00D1");
  draft = std::get_if<TypeDraft>(&tablet.ui.drafts().dialog);
  REQUIRE(draft != nullptr);
  CHECK(letters_of(draft->text) == most::kTextLetters);
  tablet.tap_id("keep");
  CHECK(tablet.refused == 0);
}

TEST_CASE("the keys stop at the longest ticket") {
  const std::string full(most::kIdBytes, '7');
  Tablet tablet{ready_pour(kTroubledDay), kTroubledDay, {}};
  TypeDraft draft{.use = TypeDraft::Use::ticket, .text = full, .at = kTroubledDay};
  draft.truck = TruckDraft{};
  tablet.ui.drafts().dialog = draft;
  tablet.frame();
  tablet.type("8");
  const auto* now = std::get_if<TypeDraft>(&tablet.ui.drafts().dialog);
  REQUIRE(now != nullptr);
  CHECK(now->text == full);
}
