#include "trade/motors/internal_vibrator.h"

#include <doctest/doctest.h>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

TEST_CASE("a larger group reaches farther, turns slower and compacts more") {
  for (int g = 2; g <= 5; ++g) {
    const auto small = internal_vibrator(g - 1);
    const auto large = internal_vibrator(g);
    REQUIRE(large->group == g);
    CHECK(large->radius.least > small->radius.least);
    CHECK(large->frequency.most < small->frequency.most);
    CHECK(large->output.least > small->output.least);
  }
  for (const auto& v : internal_vibrators()) {
    CHECK(v.head.least < v.head.most);
    CHECK(v.radius.least < v.radius.most);
  }
}

TEST_CASE("insertions cover the length and the width, a last part step counting whole") {
  CHECK(*insertions(metres(0.81), metres(0.1), metres(0.27)) == 3);
  CHECK(*insertions(metres(0.82), metres(0.1), metres(0.27)) == 4);
  CHECK(*insertions(metres(1.0), metres(0.3), metres(0.25)) == 8);
  CHECK(in_millimetres(*insert_spacing(2, 1.0)) == Approx(190.0));
}

TEST_CASE("enough vibrators keep up with the placing") {
  CHECK(*vibrators_for(3, cubic_metres_per_hour(0.0)) == 1);
  CHECK(*vibrators_for(3, cubic_metres_per_hour(4.6)) == 1);
  CHECK(*vibrators_for(3, cubic_metres_per_hour(20.0)) == 5);
}

TEST_CASE("insertions of numbers that make no sense are refused by name") {
  for (const int bad : {-1, 0, 6}) {
    check_fails(internal_vibrator(bad), Error::Kind::input, "group");
    check_fails(insert_spacing(bad), Error::Kind::input, "group");
    check_fails(vibrators_for(bad, cubic_metres_per_hour(1.0)), Error::Kind::input, "group");
  }
  for (const double bad : {kNaN, kInfinity, -1.0, 0.0, 1001.0}) {
    CAPTURE(bad);
    check_fails(insertions(metres(bad), metres(1), metres(0.3)), Error::Kind::input, "length");
    check_fails(insertions(metres(1), metres(bad), metres(0.3)), Error::Kind::input, "width");
    check_fails(insertions(metres(1), metres(1), metres(bad)), Error::Kind::input, "spacing");
    check_fails(insert_spacing(3, bad), Error::Kind::input, "spacing factor");
  }
  check_fails(vibrators_for(3, cubic_metres_per_hour(kNaN)), Error::Kind::input, "placing");
}
