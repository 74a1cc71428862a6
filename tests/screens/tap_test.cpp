#include "screens/glass/tap.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {

constexpr double kPxPerMm = 6;

class Finger {
 public:
  std::vector<Target> targets{{.id = "run", .box = {0, 0, 100, 100}},
                              {.id = "end", .box = {120, 0, 220, 100}},
                              {.id = "key 1", .box = {0, 120, 100, 220}, .repeats = true},
                              {.id = "key 2", .box = {120, 120, 220, 220}, .repeats = true},
                              {.id = "dead", .box = {0, 240, 100, 340}, .enabled = false}};

  std::string tap(Point at, double pause = 0.5, double held = 0.08) {
    return drag(at, at, pause, held);
  }
  std::string drag(Point from, Point to, double pause = 0.5, double held = 0.08) {
    now_ += Seconds{pause};
    CHECK_FALSE(reader_.feed({Touch::Kind::down, from, {}, now_}, targets, kPxPerMm));
    now_ += Seconds{held};
    const auto tap = reader_.feed({Touch::Kind::up, to, {}, now_}, targets, kPxPerMm);
    return tap ? tap->id : "";
  }
  TapReader& reader() { return reader_; }

 private:
  TapReader reader_;
  Seconds now_{100};
};

}  // namespace

TEST_CASE("a press and a release on one target is a tap") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  CHECK(finger.tap({150, 50}) == "end");
}

TEST_CASE("a finger that slides off its target taps nothing") {
  Finger finger;
  CHECK(finger.drag({95, 50}, {125, 50}).empty());
  CHECK(finger.drag({50, 50}, {50, 110}).empty());
}

TEST_CASE("a press within 350 ms of the press before it on the same target is an echo") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  CHECK(finger.tap({50, 50}, 0.10).empty());
  CHECK(finger.reader().refused() == 1);
  CHECK(finger.reader().ended()->end == PressEnd::echo);
  CHECK(finger.tap({50, 50}, 0.26).empty());   // 0.34 after the echo
  CHECK(finger.tap({50, 50}, 0.28) == "run");  // 0.36
}

TEST_CASE("a finger that bounces as it lifts is one tap, however long it lay") {
  Finger finger;
  CHECK(finger.tap({50, 50}, 0.5, 0.6) == "run");
  CHECK(finger.tap({50, 50}, 0.05).empty());
}

TEST_CASE("a train of drops on one button is one tap a second") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  for (int drop = 0; drop < 4; ++drop) CHECK(finger.tap({52, 51}, 0.12).empty());
  CHECK(finger.reader().refused() == 4);
  CHECK(finger.tap({50, 50}, 0.40) == "run");
}

TEST_CASE("a man who taps every 200 ms is heard every second, not once for ever") {
  Finger finger;
  int heard = 0;
  for (int press = 0; press < 120; ++press) heard += finger.tap({50, 50}, 0.12) == "run" ? 1 : 0;
  CHECK(heard == 24);  // one of five
  CHECK(finger.reader().refused() == 96);
}

TEST_CASE("presses that waited at one place are taps when their own times are 350 ms apart") {
  // Looked at all at once after a stall: what counts is when they were made.
  Finger finger;
  for (int press = 0; press < 10; ++press) CHECK(finger.tap({50, 50}, 0.28) == "run");
  CHECK(finger.reader().refused() == 0);
}

TEST_CASE("a tap happened when the finger touched the glass") {
  TapReader reader;
  const std::vector<Target> all{{.id = "run", .box = {0, 0, 100, 100}}};
  const Moment pressed = Moment{} + std::chrono::seconds{100};
  const Touch down{Touch::Kind::down, {50, 50}, pressed, Seconds{5}, Seconds{1.5}};
  CHECK_FALSE(reader.feed(down, all, kPxPerMm));
  const Touch up{Touch::Kind::up, {50, 50}, after(pressed, Seconds{2}), Seconds{7}};
  const auto tap = reader.feed(up, all, kPxPerMm);
  REQUIRE(tap);
  CHECK(tap->wall == pressed);
  CHECK(tap->steady == Seconds{5});
  CHECK(tap->uncertain == Seconds{1.5});
}

TEST_CASE("a press counts for what stood there when it was made, wherever that stands by now") {
  const std::vector<Target> then{{.id = "row R1", .box = {0, 0, 100, 100}},
                                 {.id = "back", .box = {120, 0, 220, 100}, .scope = 1}};
  const auto end_of = [&](Point at, const std::vector<Target>& now) {
    TapReader reader;
    reader.feed({Touch::Kind::down, at, {}, Seconds{5}}, then, kPxPerMm, &now);
    const auto tap = reader.feed({Touch::Kind::up, at, {}, Seconds{5.1}}, then, kPxPerMm, &now);
    CHECK(tap.has_value() == (reader.ended()->end == PressEnd::taken));
    return (tap ? tap->id + " " : "") + press_end_text(reader.ended()->end);
  };
  CHECK(end_of({50, 50}, {{.id = "row R1", .box = {500, 0, 600, 100}}}) == "row R1 taken");
  CHECK(end_of({50, 50}, {{.id = "row R3", .box = {0, 0, 100, 100}}}) == "gone");
  CHECK(end_of({50, 50}, {{.id = "row R1", .box = {0, 0, 100, 100}, .enabled = false}}) == "gone");
  CHECK(end_of({150, 50}, {{.id = "back", .box = {120, 0, 220, 100}, .scope = 2}}) == "gone");
  CHECK(end_of({300, 50}, then) == "nothing");
}

TEST_CASE("a finger that went far and came back was wiping") {
  TapReader reader;
  const std::vector<Target> all{{.id = "run", .box = {0, 0, 100, 100}}};
  reader.feed({Touch::Kind::down, {50, 50}, {}, Seconds{5}}, all, kPxPerMm);
  CHECK_FALSE(reader.feed(
      {.kind = Touch::Kind::up, .at = {50, 50}, .steady = Seconds{5.1}, .wandered = 15 * 6}, all,
      kPxPerMm));
  CHECK(reader.ended()->end == PressEnd::wipe);
}

TEST_CASE("an echo on what has newly come up under the finger is no tap") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  finger.targets = {{.id = "other", .box = {0, 0, 100, 100}}};
  CHECK(finger.tap({52, 50}, 0.15).empty());
  CHECK(finger.tap({52, 50}, 0.36) == "other");
}

TEST_CASE("two fingers on two targets are two taps, however close in time") {
  Finger finger;
  CHECK(finger.tap({20, 50}) == "run");
  CHECK(finger.tap({200, 50}, 0.02) == "end");
}

TEST_CASE("keys may be tapped as fast as a finger can") {
  Finger finger;
  CHECK(finger.tap({50, 170}) == "key 1");
  CHECK(finger.tap({50, 170}, 0.05) == "key 1");
  CHECK(finger.tap({130, 170}, 0.05) == "key 2");
}

TEST_CASE("an echo of a button does not press the key that comes up under it") {
  Finger finger;
  finger.targets = {{.id = "end", .box = {0, 0, 100, 100}}};
  CHECK(finger.tap({50, 50}) == "end");
  finger.targets = {{.id = "key 5", .box = {0, 0, 100, 100}, .repeats = true}};
  CHECK(finger.tap({50, 50}, 0.12).empty());
}

TEST_CASE("a palm at rest and a wiping hand tap nothing") {
  Finger finger;
  finger.targets = {{.id = "wide", .box = {0, 0, 1000, 100}}};
  CHECK(finger.tap({50, 50}, 0.5, 3.2).empty());
  CHECK(finger.drag({50, 50}, {50 + 15 * 6, 50}).empty());
  CHECK(finger.reader().refused() == 2);
  CHECK(finger.tap({50, 50}, 0.5, 2.9) == "wide");
}

TEST_CASE("what cannot be used swallows the tap") {
  Finger finger;
  CHECK(finger.tap({50, 290}).empty());
}

TEST_CASE("the topmost of overlapping targets is tapped") {
  Finger finger;
  finger.targets.push_back({.id = "over", .box = {40, 40, 60, 60}});
  CHECK(finger.tap({50, 50}) == "over");
  CHECK(finger.tap({10, 10}) == "run");
}

TEST_CASE("a target that drags follows its finger wherever and however long it goes") {
  TapReader reader;
  const std::vector<Target> targets{{.id = "axis", .box = {0, 0, 300, 100}, .drags = true},
                                    {.id = "run", .box = {0, 120, 100, 220}}};
  const auto feed = [&](Touch::Kind kind, Point at, double steady) {
    return reader.feed({kind, at, {}, Seconds{steady}}, targets, kPxPerMm);
  };
  CHECK_FALSE(reader.drag());
  CHECK_FALSE(feed(Touch::Kind::down, {50, 50}, 1));
  CHECK(reader.drag()->to == Point{50, 50});
  CHECK_FALSE(feed(Touch::Kind::move, {250, 170}, 3));  // over another target
  CHECK(reader.drag()->to == Point{250, 170});
  const auto tap = feed(Touch::Kind::up, {20, 160}, 9);
  REQUIRE(tap);
  CHECK(tap->id == "axis");
  CHECK(tap->at == Point{50, 50});
  CHECK(tap->to == Point{20, 160});
  CHECK_FALSE(reader.drag());
  CHECK(reader.refused() == 0);
  // No echo: at once the finger may take it up again, or tap beside it.
  CHECK_FALSE(feed(Touch::Kind::down, {30, 160}, 9.05));
  CHECK(feed(Touch::Kind::up, {30, 160}, 9.15)->id == "run");
}

TEST_CASE("a finger on a target that does not drag is not followed") {
  TapReader reader;
  const std::vector<Target> targets{{.id = "run", .box = {0, 0, 100, 100}}};
  (void)reader.feed({Touch::Kind::down, {50, 50}, {}, Seconds{1}}, targets, kPxPerMm);
  (void)reader.feed({Touch::Kind::move, {60, 50}, {}, Seconds{1.1}}, targets, kPxPerMm);
  CHECK_FALSE(reader.drag());
  const auto tap = reader.feed({Touch::Kind::up, {60, 50}, {}, Seconds{1.2}}, targets, kPxPerMm);
  REQUIRE(tap);
  CHECK(tap->at == Point{50, 50});
}
