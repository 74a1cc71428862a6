#include "trade/pressure/pressure_profile.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::trade;

namespace {

const UnitWeight kWeight = kilonewtons_per_m3(25);

double kpa(Pressure p) {
  return in_kilopascals(p);
}

}  // namespace

TEST_CASE("without concrete there is no pressure") {
  CHECK(pressure_profile(kWeight, Length{}, kilopascals(40), std::nullopt).parts.empty());
  CHECK(pressure_profile(kWeight, Length{}, kilopascals(40), std::nullopt).greatest().pressure ==
        Pressure{});
}

TEST_CASE("the method's pressure is reached at its depth and stands from there down") {
  const auto profile = pressure_profile(kWeight, metres(3), kilopascals(40), std::nullopt);
  CHECK(kpa(profile.at(metres(3))) == doctest::Approx(0));
  CHECK(kpa(profile.at(metres(2))) == doctest::Approx(25));
  CHECK(kpa(profile.at(metres(1))) == doctest::Approx(40));
  CHECK(kpa(profile.at(metres(0))) == doctest::Approx(40));
  const auto greatest = profile.greatest();
  CHECK(kpa(greatest.pressure) == doctest::Approx(40));
  CHECK(in_metres(greatest.z) == doctest::Approx(1.4));
  CHECK(greatest.why == PressureFrom::method);
}

TEST_CASE("concrete too shallow for the method's pressure is all liquid") {
  const auto greatest =
      pressure_profile(kWeight, metres(1), kilopascals(40), std::nullopt).greatest();
  CHECK(kpa(greatest.pressure) == doctest::Approx(25));
  CHECK(greatest.z == Length{});
}

TEST_CASE("a running row brings a full liquid head down to its reach and no further") {
  const auto profile = pressure_profile(kWeight, metres(3), kilopascals(40), metres(0.5));
  CHECK(kpa(profile.at(metres(0.6))) == doctest::Approx(60));
  CHECK(kpa(profile.at(metres(0.4))) == doctest::Approx(40));
  const auto greatest = profile.greatest();
  CHECK(kpa(greatest.pressure) == doctest::Approx(62.5));
  CHECK(greatest.z == metres(0.5));
  CHECK(greatest.why == PressureFrom::running_row);
}

TEST_CASE("a row that reaches less deep than the method's pressure adds nothing") {
  const auto profile = pressure_profile(kWeight, metres(3), kilopascals(40), metres(2));
  CHECK(kpa(profile.greatest().pressure) == doctest::Approx(40));
  CHECK(profile.greatest().why == PressureFrom::method);
  const auto above = pressure_profile(kWeight, metres(3), kilopascals(40), metres(3.5));
  CHECK(kpa(above.greatest().pressure) == doctest::Approx(40));
}

TEST_CASE("where the method does not hold the whole depth is liquid") {
  const auto profile = pressure_profile(kWeight, metres(3), std::nullopt, metres(1));
  CHECK(kpa(profile.at(metres(0))) == doctest::Approx(75));
  CHECK(kpa(profile.at(metres(1))) == doctest::Approx(50));
  CHECK(profile.greatest().why == PressureFrom::liquid);
}

TEST_CASE("a row's reach below the base counts to the base, and parts join without gaps") {
  for (const double shaken : {-0.3, 0.0, 0.7, 2.9, 3.0}) {
    CAPTURE(shaken);
    const auto profile = pressure_profile(kWeight, metres(3), kilopascals(40), metres(shaken));
    Length height;
    for (const PressurePart& part : profile.parts) {
      CHECK(part.from == height);
      height = part.to;
    }
    CHECK(height == metres(3));
  }
  CHECK(kpa(pressure_profile(kWeight, metres(3), kilopascals(40), metres(-0.3))
                .greatest()
                .pressure) == doctest::Approx(75));
}
