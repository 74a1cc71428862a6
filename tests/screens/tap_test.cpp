#include "screens/tap.h"

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

TEST_CASE("a second tap within 350 ms on the same target is an echo") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  CHECK(finger.tap({50, 50}, 0.10).empty());
  CHECK(finger.reader().refused() == 1);
  CHECK(finger.tap({50, 50}, 0.30).empty());  // 0.30 after the echo
  CHECK(finger.tap({50, 50}, 0.36) == "run");
}

TEST_CASE("a train of drops on one button is one tap, however long it lasts") {
  Finger finger;
  CHECK(finger.tap({50, 50}) == "run");
  for (int drop = 0; drop < 50; ++drop) CHECK(finger.tap({52, 51}, 0.12).empty());
  CHECK(finger.reader().refused() == 50);
  CHECK(finger.tap({50, 50}, 0.40) == "run");
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
