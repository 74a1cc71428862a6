#include "trade/concrete/placing.h"

#include <doctest/doctest.h>

#include "bad_input.h"
#include "trade/concrete/delivery.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

TEST_CASE("rate of rise and rate of placing are each other's inverse") {
  const auto plan = plan_area(metres(12.0), metres(0.3));
  REQUIRE(plan.has_value());
  const auto placing = placing_for(metres_per_hour(1.5), *plan);
  CHECK(in_cubic_metres_per_hour(*placing) == Approx(5.4));
  CHECK(in_metres_per_hour(*rise_of(*placing, *plan)) == Approx(1.5));
  CHECK(in_hours(*placing_time(metres(4.8), metres_per_hour(1.5))) == Approx(3.2));
}

TEST_CASE("trucks of 6 m3 come every 40 min to place 9 m3/h") {
  const auto pace = truck_pace(cubic_metres_per_hour(9.0), cubic_metres(6.0));
  CHECK(pace->per_hour == Approx(1.5));
  CHECK(in_seconds(pace->interval) == Approx(2400.0));
}

TEST_CASE("the coldest placing temperature steps at 12, 36 and just over 72 in") {
  const std::pair<double, double> table[] = {{11.99, 55}, {12, 50}, {35.99, 50},
                                             {36, 45},    {72, 45}, {72.01, 40}};
  for (const auto& [section, fahr] : table) {
    const auto& tried = section;
    CAPTURE(tried);
    CHECK(coldest_placing(inches(section))->fahrenheit() == Approx(fahr));
  }
}

TEST_CASE("placing with numbers that make no sense is refused by name") {
  for (const double bad : {kNaN, kInfinity, -1.0, 1e6}) {
    CAPTURE(bad);
    check_fails(output_rate(cubic_metres(bad), seconds(300)), Error::Kind::input, "load");
    check_fails(output_rate(cubic_metres(1), seconds(bad)), Error::Kind::input, "batch time");
    check_fails(plan_area(metres(bad), metres(1)), Error::Kind::input, "length");
    check_fails(plan_area(metres(1), metres(bad)), Error::Kind::input, "width");
    check_fails(rise_of(cubic_metres_per_hour(bad), square_metres(1)), Error::Kind::input,
                "rate of placing");
    check_fails(rise_of(cubic_metres_per_hour(1), square_metres(bad)), Error::Kind::input,
                "plan area");
    check_fails(placing_for(metres_per_hour(bad), square_metres(1)), Error::Kind::input, "rise");
    check_fails(placing_time(metres(bad), metres_per_hour(1)), Error::Kind::input, "height");
    check_fails(placing_time(metres(1), metres_per_hour(bad)), Error::Kind::input, "rise");
    check_fails(truck_pace(cubic_metres_per_hour(bad), cubic_metres(6)), Error::Kind::input,
                "rate of placing");
    check_fails(truck_pace(cubic_metres_per_hour(1), cubic_metres(bad)), Error::Kind::input,
                "load");
    check_fails(coldest_placing(metres(bad)), Error::Kind::input, "least dimension");
  }
  check_fails(placing_time(metres(1), metres_per_hour(0)), Error::Kind::input, "rise");
  check_fails(output_rate(cubic_metres(1), seconds(300), 0), Error::Kind::input, "mixers");
}
