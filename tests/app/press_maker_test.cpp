// Sequences of pointer and touch events as the protocol gives them (X Input Device Extension
// Library, version 2.2: TouchBegin, TouchUpdate, TouchEnd; pointer events made out of touches carry
// the flag PointerEmulated). Written down by hand after the protocol: no real glass was seen.
#include "tablet/press_maker.h"

#include <doctest/doctest.h>

#include <vector>

using namespace rb;
using namespace rb::app;
using Kind = PointerChange::Kind;
using TouchKind = screens::Touch::Kind;

namespace {

// The server counts by our clock; everything comes in `late` after it happened.
std::vector<screens::Touch> fed(const std::vector<PointerChange>& changes, double late = 0.002) {
  PressMaker maker;
  maker.told(1000, Seconds{1.0005});
  std::vector<screens::Touch> out;
  for (const PointerChange& change : changes) {
    if (const auto touch = maker.feed(change, Seconds{change.time / 1000.0 + late})) {
      out.push_back(*touch);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a finger's press and release have the finger's place and the server's time") {
  const auto out = fed({{Kind::touch_begin, 7, false, 2000, {10, 20}},
                        {Kind::touch_update, 7, false, 2040, {12, 20}},
                        {Kind::touch_end, 7, false, 2090, {11, 21}}},
                       1.5);
  REQUIRE(out.size() == 2);
  CHECK(out[0].kind == TouchKind::down);
  CHECK(out[0].at == screens::Point{10, 20});
  CHECK(out[0].steady.count() == doctest::Approx(2.0).epsilon(1e-6));
  CHECK(out[1].kind == TouchKind::up);
  CHECK(out[1].at == screens::Point{11, 21});
  CHECK(out[1].steady.count() == doctest::Approx(2.09).epsilon(1e-6));
  CHECK(out[1].wandered == doctest::Approx(2));
}

TEST_CASE("what the server makes out of a touch for those who know none is not a second press") {
  const auto out = fed({{Kind::touch_begin, 7, false, 2000, {10, 20}},
                        {Kind::button_down, 1, true, 2000, {10, 20}},
                        {Kind::touch_end, 7, false, 2090, {10, 20}},
                        {Kind::button_up, 1, true, 2090, {10, 20}}});
  CHECK(out.size() == 2);
}

TEST_CASE("a second finger is told, and does not end the press of the first") {
  const auto out = fed({{Kind::touch_begin, 7, false, 2000, {10, 20}},
                        {Kind::touch_begin, 8, false, 2050, {500, 20}},
                        {Kind::touch_update, 8, false, 2060, {510, 20}},
                        {Kind::touch_end, 8, false, 2080, {510, 20}},
                        {Kind::touch_end, 7, false, 2100, {10, 20}},
                        {Kind::touch_begin, 9, false, 2500, {30, 40}},
                        {Kind::touch_end, 9, false, 2550, {30, 40}}});
  REQUIRE(out.size() == 5);
  CHECK(out[1].kind == TouchKind::second);
  CHECK(out[1].at == screens::Point{500, 20});
  CHECK(out[2].kind == TouchKind::up);
  CHECK(out[2].wandered == 0);  // what the second did is not the first's
  CHECK(out[4].kind == TouchKind::up);
}

TEST_CASE("the left button presses; the others and the wheel do not") {
  const auto out = fed({{Kind::motion, 0, false, 1900, {900, 20}},
                        {Kind::button_down, 3, false, 1950, {900, 20}},
                        {Kind::button_up, 3, false, 1960, {900, 20}},
                        {Kind::button_down, 4, true, 1970, {900, 20}},
                        {Kind::button_down, 1, false, 2000, {10, 20}},
                        {Kind::motion, 0, false, 2010, {110, 20}},
                        {Kind::motion, 0, false, 2020, {10, 20}},
                        {Kind::button_up, 1, false, 2030, {10, 20}},
                        {Kind::button_up, 1, false, 2031, {10, 20}}});
  REQUIRE(out.size() == 4);
  CHECK(out[0].at == screens::Point{10, 20});
  CHECK(out[1].kind == TouchKind::move);  // for what is drawn with it
  CHECK(out[1].at == screens::Point{110, 20});
  CHECK(out[3].kind == TouchKind::up);
  CHECK(out[3].wandered == doctest::Approx(100));
}

TEST_CASE(
    "a server that counts by our clock is believed to the millisecond, however late it tells") {
  ServerClock clock;
  clock.received(5000, Seconds{5.0004});
  CHECK(clock.shared());
  clock.received(6000, Seconds{9});
  CHECK(clock.steady_of(6000, Seconds{9}).count() == doctest::Approx(6.0).epsilon(1e-6));
}

TEST_CASE("another server's clock is held to the least delay seen") {
  ServerClock clock;
  clock.received(1'000'000, Seconds{50.020});
  clock.received(1'001'000, Seconds{51.003});  // 3 ms at most
  clock.received(1'002'000, Seconds{54.000});
  CHECK_FALSE(clock.shared());
  CHECK(clock.steady_of(1'002'000, Seconds{54}).count() == doctest::Approx(52.003).epsilon(1e-6));
}

TEST_CASE("the server's count begins anew after 49.7 days, in the middle of a stall") {
  const double round = 4294967.296;
  ServerClock clock;
  clock.received(4294967000U, Seconds{round - 0.2955});
  CHECK(clock.shared());
  clock.received(1200, Seconds{round + 4.0});
  CHECK(clock.steady_of(1200, Seconds{round + 4.0}).count() ==
        doctest::Approx(round + 1.2).epsilon(1e-9));
}
