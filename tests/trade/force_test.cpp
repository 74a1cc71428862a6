#include "trade/motors/force.h"

#include <doctest/doctest.h>

#include <random>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

TEST_CASE("half the speed is a quarter of the force") {
  const auto f =
      force_at_speed(kilonewtons(4.0), vibrations_per_minute(6000), vibrations_per_minute(3000));
  CHECK(in_kilonewtons(*f) == Approx(1.0));
  CHECK(in_kilonewtons(*force_at_speed(kilonewtons(4.0), hertz(100), hertz(0))) == 0.0);
}

TEST_CASE("acceleration and amplitude are each other's inverse, force follows the eccentric") {
  std::mt19937 random(20260308);
  std::uniform_real_distribution<double> mm(0.001, 5.0);
  std::uniform_real_distribution<double> hz(10.0, 200.0);
  for (int i = 0; i < 200; ++i) {
    const Length a = millimetres(mm(random));
    const Frequency f = hertz(hz(random));
    const auto peak = acceleration(a, f);
    REQUIRE(peak.has_value());
    CHECK(in_millimetres(*amplitude(*peak, f)) == Approx(in_millimetres(a)));
    // An eccentric of 2 kg at that radius pulls with 2 kg x that acceleration.
    CHECK(in_newtons(*centrifugal_force(kilograms(2.0), a, f)) ==
          Approx(2.0 * in_metres_per_second2(*peak)));
  }
}

TEST_CASE("a stiff mix needs three times the force of a plastic one") {
  const auto wall = force_needed(kilograms(500), kilograms(2000));
  const auto pipe = force_needed(kilograms(500), kilograms(2000), FormKind::pipe_or_stiff_mix);
  CHECK(in_newtons(*wall) == Approx(0.5 * 900.0 * 9.80665));
  CHECK(in_newtons(*pipe) == Approx(3.0 * in_newtons(*wall)));
}

TEST_CASE("forces of numbers that make no sense are refused by name") {
  for (const double bad : {kNaN, kInfinity, -1.0, 1e7}) {
    CAPTURE(bad);
    check_fails(centrifugal_force(kilograms(bad), metres(0.1), hertz(50)), Error::Kind::input,
                "eccentric mass");
    check_fails(centrifugal_force(kilograms(1), metres(bad), hertz(50)), Error::Kind::input,
                "eccentric radius");
    check_fails(centrifugal_force(kilograms(1), metres(0.1), hertz(bad)), Error::Kind::input,
                "speed");
    check_fails(force_at_speed(kilonewtons(bad), hertz(50), hertz(50)), Error::Kind::input,
                "rated force");
    check_fails(force_at_speed(kilonewtons(1), hertz(bad), hertz(50)), Error::Kind::input,
                "rated speed");
    check_fails(acceleration(metres(bad), hertz(50)), Error::Kind::input, "amplitude");
    check_fails(acceleration(millimetres(1), hertz(bad)), Error::Kind::input, "speed");
    check_fails(amplitude(metres_per_second2(bad), hertz(50)), Error::Kind::input, "acceleration");
    check_fails(force_needed(kilograms(bad), kilograms(1)), Error::Kind::input, "form mass");
    check_fails(force_needed(kilograms(1), kilograms(bad)), Error::Kind::input, "concrete mass");
  }
  check_fails(force_at_speed(kilonewtons(1), hertz(0), hertz(50)), Error::Kind::input,
              "rated speed");
  check_fails(amplitude(metres_per_second2(1), hertz(0)), Error::Kind::input, "speed");
}
