#include "base/quantity.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

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

TEST_CASE("thousands of values go to US units and back, and come back the same") {
  std::mt19937_64 engine(20260302);
  std::uniform_real_distribution<double> powers(-3, 4);
  for (int i = 0; i < 5000; ++i) {
    const double v = std::pow(10, powers(engine));
    CAPTURE(v);
    const auto same = [&](double back) { REQUIRE(back == Approx(v).epsilon(1e-12)); };
    same(in_metres(feet(in_feet(metres(v)))));
    same(in_metres(inches(in_inches(metres(v)))));
    same(in_metres_per_hour(feet_per_hour(in_feet_per_hour(metres_per_hour(v)))));
    same(in_kilopascals(psf(in_psf(kilopascals(v)))));
    same(in_kilonewtons_per_m3(pcf(in_pcf(kilonewtons_per_m3(v)))));
    same(in_newtons(pounds_force(in_pounds_force(newtons(v)))));
    same(in_kilograms(pounds(in_pounds(kilograms(v)))));
    same(in_cubic_metres(cubic_yards(in_cubic_yards(cubic_metres(v)))));
    REQUIRE(fahrenheit(celsius(v).fahrenheit()).degrees == Approx(v).epsilon(1e-12).scale(100));
    // And the same pressure from a depth in either system.
    REQUIRE(in_kilopascals(pcf(in_pcf(kilonewtons_per_m3(24))) * feet(in_feet(metres(v)))) ==
            Approx(24 * v).epsilon(1e-12));
  }
}
