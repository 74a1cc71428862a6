#include "trade/motors/sizing.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "bad_input.h"
#include "trade/motors/force.h"

using namespace rb;
using namespace rb::trade;

namespace {

SizingCase wall(double length = 12, double height = 4.8, double rating = 60) {
  SizingCase c;
  c.length = metres(length);
  c.height = metres(height);
  c.thickness = metres(0.3);
  c.unit_weight = kilonewtons_per_m3(24);
  c.form_mass = kilograms_per_m2(60);
  c.motor = {kilonewtons(4), metres(0.75), metres(0.75)};
  c.rating = kilopascals(rating);
  return c;
}

// Every height of every lift, and the knitting depth under it, is reached by a row that serves it.
void check_covered(const SizingCase& c, const Sizing& s) {
  Length bottom;
  for (std::size_t i = 0; i < s.lifts.size(); ++i) {
    const int lift = static_cast<int>(i) + 1;
    const Length from = std::max(Length{}, bottom - c.knit_depth);
    for (int step = 0; step <= 40; ++step) {
      const Length z = from + (s.lifts[i] - from) * (step / 40.0);
      const bool reached = std::any_of(s.rows.begin(), s.rows.end(), [&](const SizedRow& row) {
        return std::count(row.lifts.begin(), row.lifts.end(), lift) > 0 &&
               z >= row.low - millimetres(0.001) && z <= row.high + millimetres(0.001);
      });
      CAPTURE(lift);
      CAPTURE(in_metres(z));
      CHECK(reached);
    }
    CHECK(s.lifts[i] - bottom <= c.deepest_lift + millimetres(10));
    bottom = s.lifts[i];
  }
  CHECK(bottom == c.height);
}

// No set hangs in two places at once, and each has a lift to move.
void check_sets(const Sizing& s, int ahead) {
  for (const SizedRow& a : s.rows) {
    CHECK(a.set < s.sets);
    for (const SizedRow& b : s.rows) {
      if (&a == &b || a.set != b.set || a.lifts.front() > b.lifts.front()) continue;
      CHECK(a.lifts.back() < b.lifts.front() - ahead);
    }
  }
}

}  // namespace

TEST_CASE("a wall is covered end to end and top to bottom by two sets that leapfrog") {
  const SizingCase c = wall();
  const auto s = size_rows(c);
  REQUIRE_MESSAGE(s, to_text(s.error()));
  CHECK(s->motors.size() == 8);
  CHECK(in_metres(s->motors.front()) == doctest::Approx(0.75));
  CHECK(in_metres(s->spacing) == doctest::Approx(1.5));
  CHECK(s->rows.size() == 4);
  CHECK(s->sets == 2);
  CHECK(s->force_share >= 1);
  check_covered(c, *s);
  check_sets(*s, 1);
}

TEST_CASE("whatever the wall, all is covered, the head kept and no set in two places") {
  int laid_out = 0;
  for (const double height : {0.4, 1.2, 1.5, 2.7, 3.6, 5.05, 9.0}) {
    for (const double length : {0.5, 3.0, 11.3}) {
      for (const double rating : {25.0, 40.0, 60.0, 120.0}) {
        for (const double reach : {0.4, 0.75, 1.3}) {
          SizingCase c = wall(length, height, rating);
          c.motor.reach_z = metres(reach);
          CAPTURE(height);
          CAPTURE(rating);
          CAPTURE(reach);
          for (const Leapfrog leapfrog : {Leapfrog::ahead, Leapfrog::paused}) {
            const auto s = size_rows(c, leapfrog);
            if (!s) {
              CHECK(s.error().kind == Error::Kind::refused);
              continue;
            }
            ++laid_out;
            check_covered(c, *s);
            check_sets(*s, leapfrog == Leapfrog::ahead ? 1 : 0);
            CHECK(in_kilopascals(s->head) <= rating * 0.95 + 1e-9);
            CHECK(s->spacing <= c.motor.reach_x * 2.0 + millimetres(0.001));
          }
        }
      }
    }
  }
  CHECK(laid_out > 300);
}

TEST_CASE("motors stand closer where reach alone would leave them too weak") {
  SizingCase c = wall();
  c.motor.force = kilonewtons(1);
  const auto s = size_rows(c);
  REQUIRE(s);
  CHECK(s->motors.size() > 8);
  CHECK(s->force_share >= 1);
  // One motor fewer would not have been enough: 0.5 (form + 0.2 concrete) of its share.
  const double share = 12.0 / static_cast<double>(s->motors.size() - 1) * 1.5;
  const auto needed =
      force_needed(kilograms(60 * share), kilograms(24000 / kStandardGravity * 0.3 * share));
  CHECK(*needed > c.motor.force);
  c.motor.force = kilonewtons(0.06);
  c.thickness = metres(1.0);
  check_fails(size_rows(c), Error::Kind::refused, "force");
}

TEST_CASE("a form too weak for any running row is refused, and says by how much") {
  check_fails(size_rows(wall(12, 4.8, 8)), Error::Kind::refused, "head on a running row");
}

TEST_CASE("the fewer motors that move in pauses are never more") {
  for (const double height : {2.4, 4.8, 7.2}) {
    const auto ahead = size_rows(wall(12, height));
    const auto paused = size_rows(wall(12, height), Leapfrog::paused);
    REQUIRE(ahead);
    REQUIRE(paused);
    CHECK(paused->sets <= ahead->sets);
  }
}

TEST_CASE("numbers that make no sense are refused by name") {
  for (const double bad : {kNaN, kInfinity, -1.0, 0.0}) {
    SizingCase c = wall(bad);
    check_fails(size_rows(c), Error::Kind::input, "length");
    c = wall();
    c.motor.reach_z = metres(bad);
    check_fails(size_rows(c), Error::Kind::input, "reach up");
    c = wall();
    c.motor.force = kilonewtons(bad);
    check_fails(size_rows(c), Error::Kind::input, "force");
  }
}
