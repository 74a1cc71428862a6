#include "trade/shape/trend.h"

#include <doctest/doctest.h>

#include <vector>

using namespace rb;
using namespace rb::trade;

namespace {

TrendPoint read(double minutes, double height) {
  return {seconds(minutes * 60), metres(height)};
}

}  // namespace

TEST_CASE("one reading, or several of one moment, tell no rate") {
  CHECK_FALSE(trend({}));
  CHECK_FALSE(trend(std::vector{read(5, 0.3)}));
  CHECK_FALSE(trend(std::vector{read(5, 0.3), read(5, 0.4)}));
}

TEST_CASE("two readings give their slope, and a range for what both may be off") {
  const auto found = trend(std::vector{read(0, 0.0), read(30, 0.6)});
  REQUIRE(found);
  CHECK(in_metres_per_hour(found->likely) == doctest::Approx(1.2));
  CHECK(in_metres_per_hour(found->low) == doctest::Approx(1.2 - 2 * 0.025 / 0.5));
  CHECK(in_metres_per_hour(found->high) == doctest::Approx(1.2 + 2 * 0.025 / 0.5));
  CHECK(in_metres(found->at(seconds(3600))) == doctest::Approx(1.2));
}

TEST_CASE("one bad reading among six moves neither the rate nor the line") {
  std::vector<TrendPoint> straight;
  for (int i = 0; i < 6; ++i) straight.push_back(read(i * 5, i * 0.1));
  const auto good = trend(straight);
  REQUIRE(good);
  for (std::size_t bad = 0; bad < straight.size(); ++bad) {
    for (const double off : {-0.5, 0.5, 5.0}) {
      CAPTURE(bad);
      CAPTURE(off);
      auto readings = straight;
      readings[bad].height += metres(off);
      const auto found = trend(readings);
      REQUIRE(found);
      CHECK(in_metres_per_hour(found->likely) == doctest::Approx(1.2));
      CHECK(in_metres(found->at(seconds(1800))) == doctest::Approx(0.6));
      CHECK(found->low < good->likely);
      CHECK(found->high > good->likely);
    }
  }
}

TEST_CASE("the range holds the likely rate and grows as the readings scatter") {
  const auto calm = trend(std::vector{read(0, 0), read(10, 0.2), read(20, 0.4), read(30, 0.6)});
  const auto rough = trend(std::vector{read(0, 0), read(10, 0.35), read(20, 0.3), read(30, 0.6)});
  REQUIRE(calm);
  REQUIRE(rough);
  CHECK(calm->low <= calm->likely);
  CHECK(calm->high >= calm->likely);
  CHECK(rough->high - rough->low > calm->high - calm->low);
}

TEST_CASE("the order of the readings does not matter") {
  const auto one = trend(std::vector{read(0, 0), read(10, 0.25), read(20, 0.4)});
  const auto other = trend(std::vector{read(20, 0.4), read(0, 0), read(10, 0.25)});
  REQUIRE(one);
  REQUIRE(other);
  CHECK(one->likely == other->likely);
  CHECK(one->low == other->low);
  CHECK(in_metres(one->height) == doctest::Approx(in_metres(other->height)));
}
