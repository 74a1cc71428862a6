// Presses that waited while the tablet stood still, and the glass locked for cleaning, on the real
// screens: every press is kept on the row it was made on, or refused aloud.
#include <doctest/doctest.h>

#include <random>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kDayBegan = *parse_moment("2026-03-02T05:00:00.000Z");

Seconds steady(Moment at) {
  return at.time_since_epoch();
}

// The picture on the glass is up; from here the tablet stands still.
void seen(Tablet& tablet) {
  tablet.ui.shown(steady(tablet.now));
}

// A press made at `at`, looked at only now.
std::optional<Press> late_press(Tablet& tablet, Point where, Moment at) {
  const Moment let_go = after(at, Seconds{0.08});
  tablet.feed(Touch{.kind = Touch::Kind::down, .at = where, .wall = at, .steady = steady(at)});
  return tablet.feed(
      Touch{.kind = Touch::Kind::up, .at = where, .wall = let_go, .steady = steady(let_go)});
}

Point middle_of(const Tablet& tablet, const std::string& id) {
  const SeenTarget* target = tablet.find_id(id);
  REQUIRE_MESSAGE(target != nullptr, id);
  return target->target.box.middle();
}

}  // namespace

TEST_CASE("presses that waited are kept on their own rows, in order, at their own times") {
  Tablet tablet(ready_pour(kDayBegan), kDayBegan + 1min);
  place_lift_1(tablet);
  seen(tablet);
  const Point r1 = middle_of(tablet, "row R1 near");
  const Point r2 = middle_of(tablet, "row R2 near");
  const Moment still = tablet.now;
  tablet.now = still + 5s;
  const std::size_t before = tablet.events.size();
  CHECK(late_press(tablet, r1, still + 1s)->end == PressEnd::taken);
  CHECK(late_press(tablet, r2, still + 2s)->end == PressEnd::taken);
  CHECK(late_press(tablet, r1, still + 3s)->end == PressEnd::taken);
  tablet.frame();
  REQUIRE(tablet.events.size() == before + 3);
  CHECK(std::get<event::Run>(tablet.events[before].what).place.row == RowId{"R1"});
  CHECK(std::get<event::Run>(tablet.events[before + 1].what).place.row == RowId{"R2"});
  CHECK(std::get<event::Rest>(tablet.events[before + 2].what).place.row == RowId{"R1"});
  for (int i = 0; i < 3; ++i) {
    CHECK(tablet.events[before + static_cast<std::size_t>(i)].at ==
          still + std::chrono::seconds{i + 1});
  }
}

TEST_CASE("a press made before a panel was seen is not given to the panel: it is refused aloud") {
  Tablet tablet(ready_pour(kDayBegan), kDayBegan + 1min);
  place_lift_1(tablet);
  seen(tablet);
  const Point hold = middle_of(tablet, "hold");
  const Point note = middle_of(tablet, "note");
  const Point r1 = middle_of(tablet, "row R1 near");
  const Moment still = tablet.now;
  tablet.now = still + 5s;
  const std::size_t before = tablet.events.size();
  CHECK(late_press(tablet, hold, still + 1s)->end == PressEnd::taken);
  const auto gone = late_press(tablet, note, still + 2s);
  CHECK(gone->end == PressEnd::gone);
  CHECK(gone->id == "note");
  CHECK(tablet.last_tone == Severity::mend);
  CHECK(tablet.says("Tap not taken: it is no longer there"));
  CHECK(std::holds_alternative<HoldDraft>(tablet.ui.drafts().dialog));
  CHECK(late_press(tablet, r1, still + 3s)->end == PressEnd::taken);  // a row stands beside it
  CHECK(tablet.events.size() == before + 1);
  // Seen by now, the panel answers.
  tablet.frame();
  seen(tablet);
  tablet.now = tablet.now + 20s;
  tablet.tap_id("back");
  CHECK_FALSE(std::holds_alternative<HoldDraft>(tablet.ui.drafts().dialog));
  CHECK_FALSE(tablet.says("not taken"));
}

TEST_CASE("a press on a row is not given to the row of the same name on another element") {
  std::vector<Event> events = ready_pour(kDayBegan);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.push_back(plan.elements.front());
  plan.elements.back().id = ElementId{"W2"};
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kDayBegan + 1min);
  tablet.tap_id("element");
  seen(tablet);
  const Point w2 = middle_of(tablet, "element W2");
  const Point r1 = middle_of(tablet, "row R1 near");
  const Moment still = tablet.now;
  tablet.now = still + 5s;
  const std::size_t before = tablet.events.size();
  CHECK(late_press(tablet, w2, still + 1s)->end == PressEnd::taken);
  CHECK(late_press(tablet, r1, still + 2s)->end == PressEnd::gone);
  CHECK(tablet.events.size() == before);
}

TEST_CASE("a press that is not taken is told, whatever the reason") {
  Tablet tablet(hung_pour(kDayBegan), kDayBegan + 1min);
  tablet.tap("START LIFT 1");
  const Point r1 = middle_of(tablet, "row R1 near");
  const std::size_t before = tablet.events.size();
  tablet.tap_at(r1, Seconds{3.5});
  CHECK(tablet.says("Tap not taken: held too long"));
  tablet.wait(seconds(10));
  CHECK_FALSE(tablet.says("not taken"));
  tablet.touch(Touch::Kind::down, r1);
  tablet.touch(Touch::Kind::up, {10, 400});
  CHECK(tablet.says("slid off"));
  tablet.wait(seconds(10));
  tablet.tap_at(r1);
  tablet.now = tablet.now + 100ms;
  tablet.tap_at(r1);
  tablet.now = tablet.now + 100ms;
  tablet.tap_at(r1);
  CHECK(tablet.says("2 taps not taken: too soon after the last"));
  CHECK(tablet.events.size() == before + 1);
}

TEST_CASE("a stall is told, and a tap without a time of its own says by how much it may be off") {
  Tablet tablet(hung_pour(kDayBegan), kDayBegan + 1min);
  tablet.tap("START LIFT 1");
  tablet.stand(Stall{Seconds{1.5}, true});
  CHECK(tablet.says("Stood still 1.5 s; taps kept their own times"));
  tablet.wait(seconds(10));
  CHECK_FALSE(tablet.says("Stood still"));
  tablet.stand(Stall{Seconds{2}, false});
  CHECK(tablet.says("times of taps may be off by it"));
  const Point r1 = middle_of(tablet, "row R1 near");
  const Moment at = tablet.now;
  tablet.feed(Touch{Touch::Kind::down, r1, at, steady(at), Seconds{2}});
  tablet.feed(Touch{Touch::Kind::up, r1, at, steady(at), Seconds{2}});
  tablet.frame();
  REQUIRE(std::holds_alternative<event::Run>(tablet.events.back().what));
  CHECK(tablet.events.back().uncertain == Seconds{2});
  CHECK(tablet.says("time \u00B1 2.0 s"));
  // Also where the moment was handed to a panel, and is kept when that is done with.
  tablet.wait(seconds(10));
  const Point hold = middle_of(tablet, "hold");
  const Moment asked = tablet.now;
  tablet.feed(Touch{Touch::Kind::down, hold, asked, steady(asked), Seconds{0.7}});
  tablet.feed(Touch{Touch::Kind::up, hold, asked, steady(asked), Seconds{0.7}});
  tablet.wait(seconds(10));
  tablet.tap_id("hold 0");
  REQUIRE(std::holds_alternative<event::Hold>(tablet.events.back().what));
  CHECK(tablet.events.back().at == asked);
  CHECK(tablet.events.back().uncertain == Seconds{0.7});
}

namespace {

void lock(Tablet& tablet) {
  tablet.tap("MORE");
  tablet.tap_id("wipe");
  REQUIRE(tablet.ui.wiping());
}

void hold_corner(Tablet& tablet, const std::string& id, Seconds held) {
  tablet.tap_at(middle_of(tablet, id), held);
}

}  // namespace

TEST_CASE("locked for cleaning, 500 random taps book nothing, and running rows stay in sight") {
  constexpr unsigned kSeed = 20260302;
  CAPTURE(kSeed);
  std::mt19937 random(kSeed);
  Tablet tablet(hung_pour(kDayBegan), kDayBegan + 1min);
  tablet.tap("START LIFT 1");
  tablet.tap_id("row R1 near");
  lock(tablet);
  const std::size_t before = tablet.events.size();
  const std::size_t others = tablet.others.size();
  std::uniform_real_distribution<float> x(0, 1280);
  std::uniform_real_distribution<float> y(0, 800);
  std::uniform_real_distribution<double> held(0.03, 1.9);
  for (int tap = 0; tap < 500; ++tap) {
    tablet.tap_at({x(random), y(random)}, Seconds{held(random)});
    tablet.now = tablet.now + 200ms;
    REQUIRE(tablet.ui.wiping());  // also past its time: the glass is not left alone
  }
  CHECK(tablet.events.size() == before);
  CHECK(tablet.others.size() == others);
  CHECK(tablet.says("R1 RUN "));
  tablet.escape();
  CHECK(tablet.ui.wiping());
  tablet.wait(seconds(4));
  CHECK(tablet.ui.wiping());
  tablet.wait(seconds(2));
  CHECK_FALSE(tablet.ui.wiping());  // its time was over, and now nothing touches it
  tablet.tap_id("row R1 near");
  CHECK(tablet.events.size() == before + 1);
}

TEST_CASE("what is said of presses and the lock is whole in both languages, on every size") {
  struct Size {
    int width, height;
  };
  for (const Size size : {Size{1280, 800}, Size{1920, 1200}, Size{1024, 768}, Size{800, 1280}}) {
    for (const Language language : Language::all()) {
      CAPTURE(size.width);
      CAPTURE(std::string{language.code()});
      Tablet tablet(ready_pour(kDayBegan), kDayBegan + 1min,
                    {size.width, size.height, Settings{.language = language}});
      const auto whole = [&] {
        for (const SeenText& text : tablet.ui.probe().texts) {
          CHECK_MESSAGE((text.fits || text.free_text), text.text);
        }
        for (const SeenTarget& target : tablet.ui.probe().targets) {
          CHECK(target.target.box.w() >= tablet.scale().target() - 1);
          CHECK(target.target.box.h() >= tablet.scale().target() - 1);
        }
      };
      const Point r1 = middle_of(tablet, "row R1 near");
      for (const bool own : {true, false}) {
        tablet.stand(Stall{Seconds{12.5}, own});
        whole();
      }
      for (const double held : {3.5, 0.08, 0.08}) {  // a palm, then echoes
        tablet.tap_at(r1, Seconds{held});
        whole();
      }
      tablet.tap_id("more");
      tablet.tap_id("wipe");
      REQUIRE(tablet.ui.wiping());
      whole();
    }
  }
}

TEST_CASE("the lock opens by two still holds, one corner after the other, and by nothing less") {
  Tablet tablet(hung_pour(kDayBegan), kDayBegan + 1min);
  lock(tablet);
  hold_corner(tablet, "wipe 2", Seconds{2.2});
  hold_corner(tablet, "wipe 1", Seconds{1.8});  // too short
  hold_corner(tablet, "wipe 2", Seconds{2.2});
  CHECK(tablet.ui.wiping());
  hold_corner(tablet, "wipe 1", Seconds{2.2});
  tablet.wait(seconds(7));  // too late for the second
  hold_corner(tablet, "wipe 2", Seconds{2.2});
  CHECK(tablet.ui.wiping());
  hold_corner(tablet, "wipe 1", Seconds{2.2});
  tablet.tap_at({640, 400});  // between them the hand wiped
  hold_corner(tablet, "wipe 2", Seconds{2.2});
  CHECK(tablet.ui.wiping());
  hold_corner(tablet, "wipe 1", Seconds{2.2});
  tablet.wait(seconds(1));
  hold_corner(tablet, "wipe 2", Seconds{2.2});
  CHECK_FALSE(tablet.ui.wiping());
}
