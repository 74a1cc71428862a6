// Events a book no longer has whole, as the screens tell of them: in words and by a sign, apart
// from what reads.
#include <doctest/doctest.h>

#include "screens/seen/damage_seen.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

const Moment kDamagedDay = *parse_moment("2026-03-02T05:12:00.000Z");

struct Seen {
  explicit Seen(Language language, bool open) : ui(Settings{.language = language}) {
    state = *fold(ready_pour(kDamagedDay));
    report = check(state, AsOf::now(state, kDamagedDay));
    cards = {make_pour_card(state)};
    cards.front().damage = damage;
    world.now = kDamagedDay;
    world.pours = &cards;
    if (!open) return;
    world.state = &state;
    world.report = &report;
    world.damage = damage;
  }
  bool says(const std::string& words) {
    ui.frame({.width_px = 1280, .height_px = 800}, world);
    for (const SeenText& text : ui.probe().texts) {
      if (text.text.find(words) != std::string::npos) return true;
    }
    return false;
  }
  const DamageSeen damage{3, "K3F7Q-5, K3F7Q-7, K3F7Q-8"};
  Ui ui;
  PourState state;
  CheckReport report;
  std::vector<PourCard> cards;
  World world;
};

}  // namespace

TEST_CASE("the Pour screen and the list name damaged events, in either language") {
  for (const Language language : Language::all()) {
    const std::string count = language == Language{} ? "3 events damaged" : "3 eventos dañados";
    for (const bool open : {true, false}) {
      Seen seen(language, open);
      CHECK(seen.says(count));
      CHECK(seen.says("K3F7Q-5, K3F7Q-7, K3F7Q-8"));
      seen.world.damage = {};
      seen.cards.front().damage = {};
      CHECK_FALSE(seen.says(count));
    }
  }
}

TEST_CASE("damage stands among all the taps of a pour as well, and a single one reads as one") {
  Seen seen(Language{}, true);
  seen.ui.drafts().dialog = TapsDraft{};
  CHECK(seen.says("3 events damaged: K3F7Q-5"));
  seen.world.damage = {1, "K3F7Q-5"};
  seen.ui.drafts().dialog = TapsDraft{};
  CHECK(seen.says("1 event damaged: K3F7Q-5"));
}

TEST_CASE("a program asked to end says that taps wait for the disk") {
  Seen seen(Language{}, true);
  seen.world.keeping.state = Keeping::State::waiting;
  seen.world.keeping.waiting = 2;
  seen.world.leaving = true;
  CHECK(seen.says("Taps that wait for the disk: 2"));
  seen.world.keeping = {};
  CHECK_FALSE(seen.says("Taps that wait"));
}

TEST_CASE("a note of the head that cannot be written shows in the mirror's light") {
  Seen seen(Language{}, true);
  seen.world.mirror = MirrorSeen{};
  CHECK(seen.says("no mirror"));
  seen.world.mirror->note_stuck = true;
  CHECK(seen.says("note beside the book"));
}
