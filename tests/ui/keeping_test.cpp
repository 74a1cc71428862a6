// What the screens say of a tap until the disk has it, and of a book that takes none.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "screens/seen/keeping.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

const Moment kNow = *parse_moment("2026-03-02T05:12:00.000Z");

struct Shown {
  explicit Shown(Language language = {})
      : ui(Settings{.language = language}), state(*fold(small_pour(kNow))) {
    Event note;
    note.id = EventId{"t1"};
    note.at = kNow;
    note.by = PersonId{"foreman"};
    note.what = event::Note{"rain", {}, {}};
    note.entry = Entry{kNow, kNow.time_since_epoch(), "boot"};
    extend(state, note);
    report = check(state, AsOf::now(state, kNow));
    world.state = &state;
    world.report = &report;
    world.now = after(kNow, Seconds{1});
  }
  UiOutput frame(std::optional<Touch> touch = {}) {
    return ui.frame({.width_px = 1280, .height_px = 800, .touch = touch}, world);
  }
  bool says(const std::string& words) const {
    for (const SeenText& text : ui.probe().texts) {
      if (text.text.find(words) != std::string::npos) return true;
    }
    return false;
  }
  const SeenTarget* target(const std::string& id) const {
    for (const SeenTarget& seen : ui.probe().targets) {
      if (seen.target.id == id) return &seen;
    }
    return nullptr;
  }
  void tap(const std::string& id) {
    const SeenTarget* at = target(id);
    REQUIRE_MESSAGE(at != nullptr, id);
    const Point middle = at->target.box.middle();
    frame(Touch{Touch::Kind::down, middle, world.now, world.now.time_since_epoch()});
    world.now = after(world.now, Seconds{0.08});
    last = frame(Touch{Touch::Kind::up, middle, world.now, world.now.time_since_epoch()});
    frame();
  }

  Ui ui;
  PourState state;
  CheckReport report;
  World world;
  UiOutput last;
};

}  // namespace

TEST_CASE("a tap reads keeping until the disk has answered, then kept") {
  Shown shown;
  shown.world.keeping = {.state = Keeping::State::keeping, .waiting = 1, .here = 1, .since = kNow};
  shown.frame();
  CHECK(shown.says("keeping"));
  CHECK_FALSE(shown.says("kept"));
  shown.world.keeping = {};
  shown.frame();
  CHECK_FALSE(shown.says("keeping"));
  CHECK(shown.says("kept"));
}

TEST_CASE("a disk that does not answer is waited for, with the count and since when") {
  Shown shown;
  shown.world.keeping = {.state = Keeping::State::keeping, .waiting = 1, .here = 1, .since = kNow};
  shown.frame();
  CHECK_FALSE(shown.says("waits for the disk"));
  shown.world.now = after(kNow, Seconds{2.5});
  shown.frame();
  CHECK(shown.says("1 tap waits for the disk since 05:12"));
  CHECK(shown.says("NOT KEPT YET"));
  shown.world.keeping.state = Keeping::State::waiting;
  shown.world.keeping.waiting = 3;
  shown.world.keeping.why = "the disk is full.";
  shown.frame();
  CHECK(shown.says("3 taps wait for the disk since 05:12. the disk is full."));
}

TEST_CASE("what was read of it is put away, and the short word stays beside the clock") {
  Shown shown;
  shown.world.keeping = {.state = Keeping::State::waiting, .waiting = 2, .here = 1, .since = kNow};
  shown.frame();
  shown.tap("trouble");
  CHECK(shown.last.intents.empty());  // nothing for the program to do
  CHECK_FALSE(shown.says("NOT KEPT YET"));
  CHECK(shown.says("2 wait"));
  shown.world.keeping.state = Keeping::State::moved_away;  // another trouble is told anew
  shown.frame();
  CHECK(shown.says("no longer where it was"));
}

TEST_CASE("a book that is only read says so before the first tap") {
  Shown shown;
  shown.world.keeping = {.state = Keeping::State::read_only};
  shown.frame();
  CHECK(shown.says("READ ONLY"));
  CHECK(shown.says("This book can be read, not written"));
  Shown spanish(*Language::of_code("es"));
  spanish.world.keeping = {.state = Keeping::State::read_only};
  spanish.frame();
  CHECK(spanish.says("SOLO LECTURA"));
}

TEST_CASE("leaving while taps wait is asked about with what would be lost") {
  Shown shown;
  shown.ui.drafts().dialog = QuitDraft{};
  shown.frame();
  CHECK(shown.says("Every tap is kept"));
  CHECK_FALSE(shown.says("LOSE"));
  shown.world.keeping = {.state = Keeping::State::waiting, .waiting = 2, .here = 2, .since = kNow};
  shown.ui.drafts().dialog = QuitDraft{};
  shown.frame();
  CHECK(shown.says("What waits is lost if you leave now"));
  CHECK(shown.says("LEAVE, LOSE IT"));
  CHECK_FALSE(shown.says("Every tap is kept"));
}

TEST_CASE("a list longer than the screen is asked for a part at a time") {
  Shown shown;
  std::vector<PourCard> cards(12, make_pour_card(shown.state));
  for (std::size_t i = 0; i < cards.size(); ++i) {
    cards[i].id.text += std::to_string(i);
    cards[i].name = "Pour " + std::to_string(i);
  }
  shown.world.state = nullptr;
  shown.world.report = nullptr;
  shown.world.pours = &cards;
  shown.world.part = PoursPart{.first = 0, .total = 10'000};
  CHECK(shown.frame().intents.empty());
  CHECK(shown.says("Pour 0"));
  UiOutput out;
  for (int page = 0; page < 12 && out.intents.empty(); ++page) {
    shown.ui.drafts().pours_page = page;
    out = shown.frame();
  }
  REQUIRE(out.intents.size() == 1);
  const auto* part = std::get_if<ShowPours>(&out.intents[0]);
  REQUIRE(part != nullptr);
  CHECK(part->first + part->count > 12);
  CHECK(part->count < 12);
  // Asked once; the screen waits for it.
  shown.world.part->coming = true;
  CHECK(shown.frame().intents.empty());
  CHECK(shown.says("Opening"));
}

TEST_CASE("what is looked for is asked of the program and taken off again by one tap") {
  Shown shown;
  std::vector<PourCard> cards{make_pour_card(shown.state)};
  shown.world.state = nullptr;
  shown.world.report = nullptr;
  shown.world.pours = &cards;
  shown.world.part = PoursPart{.first = 0, .total = 1};
  shown.frame();
  shown.tap("find");
  shown.ui.frame({.width_px = 1280, .height_px = 800, .typed = {"c", "o", "r", "e"}}, shown.world);
  shown.frame();
  shown.world.now = after(shown.world.now, Seconds{1});
  shown.tap("keep");
  const UiOutput out = shown.frame();
  REQUIRE(out.intents.size() == 1);
  CHECK(std::get<ShowPours>(out.intents[0]).find == "core");
  shown.world.part->find = "core";
  CHECK(shown.frame().intents.empty());
  shown.world.now = after(shown.world.now, Seconds{1});
  shown.tap("find-all");
  const UiOutput all = shown.frame();
  REQUIRE(all.intents.size() == 1);
  CHECK(std::get<ShowPours>(all.intents[0]).find.empty());
}
