#include "base/quantity.h"

#include <doctest/doctest.h>

#include "base/result.h"

using namespace rb;
using doctest::Approx;

TEST_CASE("units convert by the exact factors of NIST SP 811") {
  CHECK(in_feet(metres(0.3048)) == Approx(1.0));
  CHECK(in_kilopascals(psf(1.0)) == Approx(0.04788026).epsilon(1e-7));       // NIST SP 811 B.8
  CHECK(in_kilonewtons_per_m3(pcf(1.0)) == Approx(0.157087).epsilon(1e-5));  // from lbf and ft
  CHECK(in_newtons(pounds_force(1.0)) == Approx(4.448222).epsilon(1e-6));    // NIST SP 811 B.8
  CHECK(in_cubic_metres(cubic_yards(1.0)) == Approx(0.7645549).epsilon(1e-6));
  CHECK(fahrenheit(212.0).degrees == Approx(100.0));
  CHECK(celsius(-40.0).fahrenheit() == Approx(-40.0));
}

TEST_CASE("unit weight times depth is a pressure") {
  const Pressure p = kilonewtons_per_m3(25.0) * metres(2.0);
  CHECK(in_kilopascals(p) == Approx(50.0));
}

TEST_CASE("an error says where, what and what to do") {
  const Error error{Error::Kind::input, "line 3", "height is below zero",
                    "Give a height from 0 up"};
  CHECK(to_text(error) == "line 3: height is below zero. Give a height from 0 up.");
}
