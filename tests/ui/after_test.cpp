// After the last lift, by taps: curing, the concrete's temperature, leave to strip, stripped faces.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kDawn = *parse_moment("2026-03-02T05:00:00.000Z");

template <class Kind>
std::vector<Kind> kept(const Tablet& tablet) {
  std::vector<Kind> all;
  for (const Event& event : tablet.events) {
    if (const auto* kind = std::get_if<Kind>(&event.what)) all.push_back(*kind);
  }
  return all;
}

void open_after(Tablet& tablet) {
  tablet.tap("NOTE");
  tablet.tap("CURE, STRIP");
}

}  // namespace

TEST_CASE("curing, temperature and leave to strip are taps; a stripped face takes two") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  open_after(tablet);
  CHECK_FALSE(tablet.find_id("strip near")->target.enabled);  // nothing stands there yet
  tablet.tap("BACK");
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(60));
  open_after(tablet);
  tablet.tap_id("cure start");
  REQUIRE(kept<event::CureStart>(tablet).size() == 1);
  tablet.wait(seconds(600));
  open_after(tablet);
  CHECK(tablet.says("since 05:1"));
  tablet.tap_id("hardening");
  for (const char key : std::string{"24"}) tablet.tap_id(std::string("key ") + key);
  tablet.tap("KEEP");
  REQUIRE(kept<event::ConcreteTemp>(tablet).size() == 1);
  CHECK(kept<event::ConcreteTemp>(tablet).front().temp.degrees == doctest::Approx(24));
  open_after(tablet);
  tablet.tap_id("cure end");
  CHECK(kept<event::CureEnd>(tablet).size() == 1);
  open_after(tablet);
  tablet.tap_id("strip near");
  CHECK(kept<event::Strip>(tablet).empty());
  CHECK(tablet.says("STRIPPED?"));
  tablet.wait(seconds(2));
  tablet.tap_id("strip near");
  REQUIRE(kept<event::Strip>(tablet).size() == 1);
  CHECK(kept<event::Strip>(tablet).front().side == Side::near_side);
}
