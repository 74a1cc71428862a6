#include "trade/concrete/setting.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

namespace {

using Between = TemperatureHistory::Between;

TemperatureHistory some_history(std::mt19937& random, Between between) {
  std::uniform_real_distribution<double> hour(0.0, 24.0);
  std::uniform_real_distribution<double> warmth(2.0, 45.0);
  TemperatureHistory history{between, {}};
  const int count = std::uniform_int_distribution<int>(1, 6)(random);
  for (int i = 0; i < count; ++i) {
    history.readings.push_back({hours(hour(random)), celsius(warmth(random))});
  }
  std::ranges::sort(history.readings, {}, &TemperatureReading::at);
  return history;
}

// The plain sum over many small steps that the closed forms must agree with.
template <class RateAt>
double slow_integral(const TemperatureHistory& history, double until, const RateAt& rate_at) {
  const auto temperature = [&](double t) {
    const auto& r = history.readings;
    if (t < r.front().at.count()) return r.front().concrete.degrees;
    std::size_t i = 0;
    while (i + 1 < r.size() && r[i + 1].at.count() <= t) ++i;
    if (history.between == Between::stepped || i + 1 == r.size()) return r[i].concrete.degrees;
    const double share = (t - r[i].at.count()) / (r[i + 1].at.count() - r[i].at.count());
    return r[i].concrete.degrees + share * (r[i + 1].concrete.degrees - r[i].concrete.degrees);
  };
  const int steps = 20000;
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) sum += rate_at(temperature((i + 0.5) * until / steps));
  return sum * until / steps;
}

}  // namespace

TEST_CASE("at the reference temperature equivalent age is age") {
  CHECK(rate_factor(celsius(20.0)) == 1.0);
  CHECK(in_hours(*time_to_reach(hours(5.0), celsius(20.0))) == Approx(5.0));
  CHECK(in_hours(*time_to_reach(hours(5.0), celsius(30.0), {celsius(30.0), {}})) == Approx(5.0));
}

TEST_CASE("warm concrete sets sooner, cold later, by the rate factor") {
  for (const double t : {5.0, 12.0, 28.0, 35.0}) {
    CAPTURE(t);
    const double set = in_hours(*time_to_reach(hours(5.0), celsius(t)));
    CHECK(set == Approx(5.0 / rate_factor(celsius(t))));
    CHECK((set < 5.0) == (t > 20.0));
  }
}

TEST_CASE("equivalent age and maturity over a history are the sums of small steps") {
  std::mt19937 random(20260304);
  for (const auto between : {Between::stepped, Between::sloped}) {
    for (int i = 0; i < 20; ++i) {
      CAPTURE(i);
      const auto history = some_history(random, between);
      const double until = std::uniform_real_distribution<double>(1.0, 30.0)(random) * 3600.0;
      const double age = slow_integral(history, until, [](double t) {
        return std::exp(-5000.0 * (1.0 / (t + 273.15) - 1.0 / 293.15));
      });
      CHECK(in_seconds(*equivalent_age(history, seconds(until))) == Approx(age).epsilon(2e-4));
      const double maturity =
          slow_integral(history, until, [](double t) { return std::max(0.0, t - 15.0); });
      CHECK(nurse_saul(history, seconds(until), celsius(15.0))->degree_seconds + 1.0 ==
            Approx(maturity + 1.0).epsilon(5e-4));
    }
  }
}

TEST_CASE("the time to reach an equivalent age is the inverse of the age at a time") {
  std::mt19937 random(20260305);
  std::uniform_real_distribution<double> age(0.1, 40.0);
  for (const auto between : {Between::stepped, Between::sloped}) {
    for (int i = 0; i < 300; ++i) {
      CAPTURE(i);
      const auto history = some_history(random, between);
      const Seconds wanted = hours(age(random));
      const auto at = time_to_reach(wanted, history);
      REQUIRE(at.has_value());
      CHECK(in_hours(*equivalent_age(history, *at)) == Approx(in_hours(wanted)).epsilon(1e-11));
    }
  }
}

TEST_CASE("no time has no age, and a jump between two readings at one time counts once") {
  const TemperatureHistory jump{Between::sloped,
                                {{hours(0), celsius(20)},
                                 {hours(2), celsius(20)},
                                 {hours(2), celsius(30)},
                                 {hours(4), celsius(30)}}};
  CHECK(in_hours(*equivalent_age(jump, hours(0))) == 0.0);
  CHECK(in_hours(*time_to_reach(hours(0), jump)) == 0.0);
  CHECK(in_hours(*equivalent_age(jump, hours(4))) ==
        Approx(2.0 + 2.0 * rate_factor(celsius(30.0))));
}

TEST_CASE("a history or a number that makes no sense is refused by name") {
  const TemperatureHistory good{Between::stepped, {{hours(0), celsius(20)}}};
  for (const double bad : {kNaN, kInfinity, -1.0, 10001.0}) {
    CAPTURE(bad);
    check_fails(time_to_reach(hours(bad), celsius(20)), Error::Kind::input, "equivalent age");
    check_fails(equivalent_age(good, hours(bad)), Error::Kind::input, "time");
    check_fails(nurse_saul(good, hours(bad)), Error::Kind::input, "time");
    check_fails(equivalent_age({Between::stepped, {{hours(bad), celsius(20)}}}, hours(5)),
                Error::Kind::input, "reading 1");
  }
  for (const double bad : {kNaN, -kInfinity, -51.0, 101.0}) {
    CAPTURE(bad);
    check_fails(time_to_reach(hours(5), celsius(bad)), Error::Kind::input, "concrete temperature");
    check_fails(time_to_reach(hours(5), celsius(20), {celsius(bad), {}}), Error::Kind::input,
                "reference temperature");
    check_fails(nurse_saul(good, hours(5), celsius(bad)), Error::Kind::input, "datum");
  }
  for (const double bad : {kNaN, 0.0, -5000.0, 41.5, 40000.0}) {
    CAPTURE(bad);
    check_fails(time_to_reach(hours(5), celsius(20), {celsius(20), {bad}}), Error::Kind::input,
                "Q");
  }
  check_fails(equivalent_age({}, hours(5)), Error::Kind::input, "no reading");
  check_fails(equivalent_age({Between::stepped, {{hours(2), celsius(20)}, {hours(1), celsius(20)}}},
                             hours(5)),
              Error::Kind::input, "reading 2");
}
