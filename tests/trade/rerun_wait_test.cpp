#include "trade/pressure/rerun_wait.h"

#include <doctest/doctest.h>

#include <vector>

using namespace rb;
using namespace rb::trade;

namespace {

// 3 m in 3 h, then still; sets 5 h after it came.
TopCurve steady() {
  TopCurve top;
  top.read(Seconds{}, Length{});
  top.read(hours(3), metres(3));
  return top;
}
const std::vector<SetStep> kFiveHours{{Seconds{}, hours(5)}};

HeadLimit limit(double rating_kpa, double low, double high = 2.9) {
  return {kilonewtons_per_m3(25), kilopascals(rating_kpa), metres(low), metres(high)};
}

std::optional<double> wait(const HeadLimit& where, double at_h, const TopCurve& top = steady(),
                           const std::vector<SetStep>& sets = kFiveHours) {
  const auto found = wait_before_running(top, sets, where, hours(at_h));
  return found ? std::optional{in_hours(*found)} : std::nullopt;
}

}  // namespace

TEST_CASE("a head within the rating needs no wait") {
  CHECK(wait(limit(75, 0.0), 3) == 0);
  CHECK(wait(limit(50, 1.0), 3) == 0);
  CHECK(wait(limit(40, 1.5), 3) == 0);
}

TEST_CASE("the wait ends when the last concrete over the rating has set") {
  // 50 kPa bear 2 m: all below z = 1 m must set; it came at 1 h and sets at 6 h.
  CHECK(*wait(limit(50, 0.2), 3) == doctest::Approx(3));
  CHECK(*wait(limit(50, 0.9), 3) == doctest::Approx(3));
  CHECK(*wait(limit(50, 0.2), 5.5) == doctest::Approx(0.5));
  CHECK(*wait(limit(50, 0.2), 7) == 0);
}

TEST_CASE("when nothing plastic would be left in reach there is no wait to give") {
  CHECK_FALSE(wait(limit(50, 0.2, 0.9), 3));
  CHECK_FALSE(wait(limit(50, 0.2, 1.0), 3));
  CHECK(wait(limit(50, 0.2, 1.1), 3));
}

TEST_CASE("the slowest of the concrete in question is waited for") {
  // What came between 0.5 h and 0.8 h was cold and sets 8 h after it came.
  const std::vector<SetStep> sets{
      {Seconds{}, hours(5)}, {hours(0.5), hours(8)}, {hours(0.8), hours(5)}};
  CHECK(*wait(limit(50, 0.2), 3, steady(), sets) == doctest::Approx(8.8 - 3));
  CHECK(*wait(limit(50, 0.79), 3, steady(), sets) == doctest::Approx(8.8 - 3));
  CHECK(*wait(limit(50, 0.85), 3, steady(), sets) == doctest::Approx(6 - 3));
}

TEST_CASE("after the wait no plastic concrete in reach is deeper than the rating bears") {
  // Looked at spot by spot, with steps of every kind.
  const std::vector<std::vector<SetStep>> many{
      kFiveHours,
      {{hours(-9), hours(4)}, {hours(1.2), hours(6)}},
      {{hours(-9), hours(6)}, {hours(0.4), hours(3)}, {hours(2), hours(5)}}};
  for (const auto& sets : many) {
    for (const double rating : {30.0, 42.0, 55.0, 70.0}) {
      const HeadLimit where = limit(rating, 0.1);
      const auto found = wait_before_running(steady(), sets, where, hours(3));
      REQUIRE(found);
      const Seconds then = hours(3) + *found;
      for (int i = 0; i <= 280; ++i) {
        const Length z = metres(0.1 + i * 0.01);
        const Seconds came = *steady().reached(z);
        Seconds to_set = sets.front().to_set;
        for (const SetStep& step : sets) {
          if (step.from <= came) to_set = step.to_set;
        }
        if (came + to_set <= then) continue;  // it has set
        CAPTURE(in_metres(z));
        CHECK(in_kilopascals(kilonewtons_per_m3(25) * (metres(3) - z)) <= rating + 1e-6);
      }
    }
  }
}
