// The mirror's light, the choice of its folder, COPY, and the code to photograph, by taps.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "screens/paper/mirror_panel.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

const Moment kNow = *parse_moment("2026-03-02T05:12:00.000Z");

struct Shown {
  explicit Shown(Language language = {})
      : ui(Settings{.language = language}), state(*fold(ready_pour(kNow))) {
    report = check(state, AsOf::now(state, kNow));
    world.state = &state;
    world.report = &report;
    world.now = after(kNow, Seconds{1});
    world.mirror = MirrorSeen{};
  }
  void close() {
    Event end;
    end.id = EventId{"t9"};
    end.at = kNow;
    end.by = PersonId{"foreman"};
    end.what = event::PourClose{};
    end.entry = Entry{kNow, kNow.time_since_epoch(), "boot"};
    extend(state, end);
  }
  UiOutput frame(std::optional<Touch> touch = {}) {
    UiOutput out = ui.frame({.width_px = 1280, .height_px = 800, .touch = touch}, world);
    for (const Intent& intent : out.intents) all.push_back(intent);
    return out;
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
    frame();
    const SeenTarget* at = target(id);
    REQUIRE_MESSAGE(at != nullptr, id);
    const Point middle = at->target.box.middle();
    world.now = after(world.now, Seconds{1});
    frame(Touch{Touch::Kind::down, middle, world.now, world.now.time_since_epoch()});
    world.now = after(world.now, Seconds{0.08});
    frame(Touch{Touch::Kind::up, middle, world.now, world.now.time_since_epoch()});
    frame();
  }
  template <class Wish>
  std::vector<Wish> wishes() const {
    std::vector<Wish> some;
    for (const Intent& intent : all) {
      if (const auto* wish = std::get_if<Wish>(&intent)) some.push_back(*wish);
    }
    return some;
  }

  Ui ui;
  PourState state;
  CheckReport report;
  World world;
  Intents all;
};

}  // namespace

TEST_CASE("the light says how the mirror stands, in words of its own for each") {
  Shown shown;
  shown.frame();
  REQUIRE(shown.target("mirror") != nullptr);
  CHECK(shown.target("mirror")->text == "no mirror");
  shown.world.mirror->folder = "/media/u/STICK";
  shown.frame();
  CHECK(shown.target("mirror")->text == "mirror: looking");
  shown.world.mirror->behind = 0;
  shown.frame();
  CHECK(shown.target("mirror")->text == "mirror up to date");
  shown.world.mirror->behind = 3;
  shown.world.mirror->since = kNow;
  shown.frame();
  CHECK(shown.target("mirror")->text == "mirror 3 taps behind since 05:12");
  shown.world.mirror->behind = 1;
  shown.frame();
  CHECK(shown.target("mirror")->text == "mirror 1 tap behind since 05:12");
  // A stick that is gone is told of though nothing was tapped since.
  shown.world.mirror->behind = 0;
  shown.world.mirror->trouble = MirrorSeen::Trouble::gone;
  shown.frame();
  CHECK(shown.target("mirror")->text == "mirror gone since 05:12");
}

TEST_CASE("the light speaks the user's language") {
  Shown shown(*Language::of_code("es"));
  shown.frame();
  CHECK(shown.says("sin espejo"));
  shown.world.mirror->folder = "/media/u/STICK";
  shown.world.mirror->behind = 3;
  shown.world.mirror->since = kNow;
  shown.frame();
  CHECK(shown.says("faltan 3 al espejo desde 05:12"));
}

TEST_CASE("a book that is only read has no light") {
  Shown shown;
  shown.world.mirror.reset();
  shown.frame();
  CHECK(shown.target("mirror") == nullptr);
}

TEST_CASE("the mirror's folder is chosen among those found, and taken off again") {
  Shown shown;
  shown.tap("mirror");
  CHECK_FALSE(shown.wishes<FindPlaces>().empty());
  CHECK(shown.says("No stick, card or shared folder was found"));
  shown.world.mirror->places = {{"/media/u/STICK", false}, {"/mnt/office", true}};
  shown.frame();
  CHECK(shown.says("STICK"));
  CHECK(shown.says("lost with it"));
  shown.tap("mirror at /media/u/STICK");
  REQUIRE(shown.wishes<UseMirror>().size() == 1);
  CHECK(shown.wishes<UseMirror>()[0].folder == "/media/u/STICK");
  shown.world.mirror->folder = "/media/u/STICK";
  // Pulled out: no longer found, but still the one chosen.
  shown.world.mirror->places.clear();
  shown.world.mirror->trouble = MirrorSeen::Trouble::gone;
  shown.frame();
  CHECK(shown.target("mirror at /media/u/STICK") != nullptr);
  CHECK(shown.says("put the stick back"));
  shown.tap("mirror none");
  REQUIRE(shown.wishes<UseMirror>().size() == 2);
  CHECK(shown.wishes<UseMirror>()[1].folder.empty());
}

TEST_CASE("the panel is reached from the settings, of a pour and of the list") {
  Shown shown;
  shown.tap("more");
  shown.tap("settings");
  shown.tap("second copy");
  CHECK(shown.target("copy") != nullptr);
  Shown list;
  list.world.state = nullptr;
  list.world.report = nullptr;
  list.tap("settings");
  list.tap("second copy");
  CHECK(list.target("copy") != nullptr);
  list.tap("back");
  CHECK(list.target("copy") == nullptr);
}

TEST_CASE("while its panel is open the folders are looked for again and again") {
  Shown shown;
  shown.tap("mirror");
  const auto before = shown.wishes<FindPlaces>().size();
  CHECK(shown.frame().next_change <= kLookForPlaces);
  CHECK(shown.wishes<FindPlaces>().size() == before);
  shown.world.now = after(shown.world.now, kLookForPlaces);
  shown.frame();
  CHECK(shown.wishes<FindPlaces>().size() == before + 1);
}

TEST_CASE("COPY asks for a folder first, then says how far it is, the file's name or what failed") {
  Shown shown;
  shown.tap("mirror");
  CHECK(shown.says("choose a folder first"));
  shown.tap("copy");
  CHECK(shown.wishes<CopyNow>().empty());
  shown.world.mirror->folder = "/media/u/STICK";
  shown.tap("copy");
  CHECK(shown.wishes<CopyNow>().size() == 1);
  shown.world.mirror->copy = {CopySeen::State::under_way, 0.42, {}};
  shown.frame();
  CHECK(shown.says("copying, 42 %"));
  shown.tap("copy");  // one at a time
  CHECK(shown.wishes<CopyNow>().size() == 1);
  shown.world.mirror->copy = {CopySeen::State::made, 1, "pours-78.risebook"};
  shown.frame();
  CHECK(shown.says("Copied: pours-78.risebook"));
  shown.world.mirror->copy = {CopySeen::State::failed, 0, "no room"};
  shown.frame();
  CHECK(shown.says("NOT COPIED: no room"));
}

TEST_CASE("a closed pour shows the code to photograph, once the disk has all of it") {
  Shown shown;
  shown.world.head = HeadSeen{78, "QC6RK-2KKSM"};
  shown.frame();
  CHECK_FALSE(shown.says("photograph this"));  // still open
  shown.close();
  shown.world.keeping = {.state = Keeping::State::keeping, .waiting = 1, .here = 1, .since = kNow};
  shown.frame();
  CHECK_FALSE(shown.says("photograph this"));
  shown.world.keeping = {};
  shown.frame();
  CHECK(shown.says("photograph this: QC6RK-2KKSM, event 78"));
}
