#include "trade/concrete/penetration.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

namespace {

PenetrationReading reading(double hour, double mpa) {
  return {hours(hour), kilopascals(mpa * 1000.0)};
}

}  // namespace

TEST_CASE("readings on a power law give its set times back with no uncertainty") {
  std::vector<PenetrationReading> readings;
  for (const double t : {3.0, 4.0, 5.0, 6.0, 7.0})
    readings.push_back(reading(t, 0.002 * std::pow(t, 5)));
  const auto fit = fit_penetration(readings);
  REQUIRE(fit.has_value());
  CHECK(fit->slope == Approx(5.0));
  CHECK(fit->correlation == Approx(1.0));
  const auto initial = set_time(*fit, kInitialSet);
  REQUIRE(initial.has_value());
  CHECK(in_hours(initial->at) == Approx(std::pow(3.5 / 0.002, 0.2)));
  CHECK(in_hours(initial->standard_error) < 1e-6);
  CHECK_FALSE(initial->beyond_readings);
  CHECK(set_time(*fit, kilopascals(40000.0))->beyond_readings);
}

TEST_CASE("three readings give the uncertainty worked out by hand") {
  // ln h 0, 1, 2 and ln MPa 0, 1.3, 2: slope 1, residuals -0.1, 0.2, -0.1 with one degree of
  // freedom.
  const auto fit = fit_penetration({reading(1.0, 1.0), reading(std::exp(1.0), std::exp(1.3)),
                                    reading(std::exp(2.0), std::exp(2.0))});
  REQUIRE(fit.has_value());
  CHECK(fit->slope == Approx(1.0));
  CHECK(fit->intercept == Approx(0.1));
  CHECK(fit->residual_deviation == Approx(std::sqrt(0.06)));
  const auto set = set_time(*fit, kilopascals(1000.0 * std::exp(1.1)));
  REQUIRE(set.has_value());
  const double error = std::sqrt(0.06 / 3.0);
  CHECK(in_hours(set->at) == Approx(std::exp(1.0)));
  CHECK(in_hours(set->standard_error) == Approx(std::exp(1.0) * error));
  // Student's t, one degree of freedom, two-sided 95 %: 12.706, read in a reprint of the
  // NIST/SEMATECH e-Handbook's table.
  CHECK(in_hours(set->early) == Approx(std::exp(1.0 - 12.706 * error)).epsilon(1e-4));
  CHECK(in_hours(set->late) == Approx(std::exp(1.0 + 12.706 * error)).epsilon(1e-4));
}

TEST_CASE("the 95 % interval holds the true set time in about 95 of 100 series") {
  std::mt19937 random(20260306);
  std::normal_distribution<double> scatter(0.0, 0.08);
  const double truth = std::pow(3.5 / 0.002, 0.2);
  int held = 0;
  int series = 0;
  for (int i = 0; i < 2000; ++i) {
    std::vector<PenetrationReading> readings;
    for (const double t : {3.0, 3.6, 4.2, 4.8, 5.4, 6.0}) {
      readings.push_back(reading(t, 0.002 * std::pow(t, 5) * std::exp(scatter(random))));
    }
    const auto fit = fit_penetration(readings);
    if (!fit) continue;  // a series whose resistance fell is refused
    ++series;
    const auto set = set_time(*fit);
    CHECK(set->early < set->at);
    CHECK(set->at < set->late);
    if (in_hours(set->early) <= truth && truth <= in_hours(set->late)) ++held;
  }
  REQUIRE(series > 1900);
  CHECK(held > 0.93 * series);
  CHECK(held < 0.97 * series);
}

TEST_CASE("too few readings or readings that do not grow are refused") {
  check_fails(fit_penetration({}), Error::Kind::refused, "0 of the three");
  check_fails(fit_penetration({reading(3, 1), reading(4, 2)}), Error::Kind::refused,
              "2 of the three");
  check_fails(fit_penetration({reading(3, 1), reading(4, 2), reading(5, 2)}), Error::Kind::refused,
              "reading 3: the resistance");
  check_fails(fit_penetration({reading(3, 1), reading(4, 0.9), reading(5, 2)}),
              Error::Kind::refused, "reading 2: the resistance");
  check_fails(fit_penetration({reading(3, 1), reading(3, 2), reading(5, 3)}), Error::Kind::refused,
              "reading 2: the time");
  for (const double bad : {kNaN, kInfinity, 0.0, -1.0, 101.0}) {
    CAPTURE(bad);
    check_fails(fit_penetration({reading(3, 1), reading(4, 2), reading(bad, 3)}),
                Error::Kind::input, "reading 3: time");
    check_fails(fit_penetration({reading(3, bad), reading(4, 2), reading(5, 3)}),
                Error::Kind::input, "reading 1: resistance");
    check_fails(set_time(*fit_penetration({reading(3, 1), reading(4, 2), reading(5, 3)}),
                         kilopascals(bad * 1000.0)),
                Error::Kind::input, "threshold");
  }
}
