#include "trade/concrete/strength.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "trade/concrete/evaporation.h"

using namespace rb;
using namespace rb::trade;

namespace {

const std::array kCurve{StrengthPoint{hours(10), megapascals(4)},
                        StrengthPoint{hours(20), megapascals(10)},
                        StrengthPoint{hours(48), megapascals(20)}};

double mpa(double age_hours) {
  const auto strength = strength_at(kCurve, hours(age_hours));
  return strength ? in_megapascals(*strength) : -1;
}

TemperatureHistory ramp(double from, double to) {
  return {TemperatureHistory::Between::sloped,
          {{seconds(0), celsius(from)}, {hours(10), celsius(to)}}};
}

double least_hours(const TemperatureHistory& history,
                   std::optional<ActivationTemperature> q = std::nullopt) {
  const auto age = least_equivalent_age(history, hours(10), q);
  REQUIRE(age);
  return in_hours(*age);
}

}  // namespace

TEST_CASE("strength runs straight between the points of a curve and is not guessed beyond them") {
  CHECK(mpa(9.999) == -1);  // nothing is shown before the first
  CHECK(mpa(10) == doctest::Approx(4));
  CHECK(mpa(15) == doctest::Approx(7));
  CHECK(mpa(34) == doctest::Approx(15));
  CHECK(mpa(48) == doctest::Approx(20));
  CHECK(mpa(1000) == doctest::Approx(20));  // never more than at the last
  CHECK_FALSE(strength_at({}, hours(10)));
}

TEST_CASE("without a Q of its own concrete hardens by the slower of two, hot and cold") {
  const auto at = [](double degrees, double q) {
    return 10 * std::exp(-q * (1 / (degrees + 273.15) - 1 / 293.15));
  };
  CHECK(least_hours(ramp(20, 20)) == doctest::Approx(10));
  CHECK(least_hours(ramp(10, 10)) == doctest::Approx(at(10, 6600)));
  CHECK(least_hours(ramp(40, 40)) == doctest::Approx(at(40, 4400)));
  CHECK(least_hours(ramp(40, 40), ActivationTemperature{5000}) == doctest::Approx(at(40, 5000)));
  // Through the reference: colder half by one, warmer half by the other, less than either alone.
  const double both = least_hours(ramp(10, 30));
  CHECK(both < least_hours(ramp(10, 30), kQuickSet));
  CHECK(both < least_hours(ramp(10, 30), kSlowSet));
  CHECK(both == doctest::Approx(least_hours(ramp(30, 10))));
}

TEST_CASE("a surface dries faster in wind, warmth and dry air, and never the wrong way") {
  const auto rate = [](double concrete, double air, double humidity, double wind) {
    const auto e =
        evaporation(celsius(concrete), {celsius(air), Humidity{humidity}, metres_per_second(wind)});
    REQUIRE(e);
    return e->kg_m2_h;
  };
  CHECK(rate(30, 25, 0.4, 5) > rate(30, 25, 0.4, 4));
  CHECK(rate(31, 25, 0.4, 5) > rate(30, 25, 0.4, 5));
  CHECK(rate(30, 25, 0.3, 5) > rate(30, 25, 0.4, 5));
  CHECK(rate(5, 35, 1.0, 5) == 0);
  CHECK_FALSE(evaporation(celsius(-19), {celsius(5), Humidity{0.5}, {}}));
  CHECK_FALSE(evaporation(celsius(20), {celsius(5), Humidity{1.5}, {}}));
  CHECK_FALSE(evaporation(celsius(20), {celsius(5), Humidity{0.5}, metres_per_second(80)}));
}
