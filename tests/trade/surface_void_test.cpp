#include "trade/concrete/surface_void.h"

#include <doctest/doctest.h>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

TEST_CASE("a face is of the best class its voids allow, or of none") {
  const std::pair<double, std::optional<VoidClass>> table[] = {
      {0.0, VoidClass::svr4},    {0.003, VoidClass::svr4},  {0.0031, VoidClass::svr3},
      {0.006, VoidClass::svr3},  {0.0061, VoidClass::svr2}, {0.009, VoidClass::svr2},
      {0.0091, VoidClass::svr1}, {0.012, VoidClass::svr1},  {0.0121, std::nullopt}};
  for (const auto& [share, expected] : table) {
    const auto& tried = share;
    CAPTURE(tried);
    const auto voids = void_class(share);
    REQUIRE(voids.has_value());
    CHECK((*voids == expected));
  }
}

TEST_CASE("void shares that make no sense are refused by name") {
  CHECK(*void_share(square_metres(0.001), square_metres(0.25)) == Approx(0.004));
  for (const double bad : {kNaN, kInfinity, -1.0, 2e4}) {
    CAPTURE(bad);
    check_fails(void_share(square_metres(bad), square_metres(0.25)), Error::Kind::input,
                "area of voids");
    check_fails(void_share(square_metres(0.0), square_metres(bad)), Error::Kind::input,
                "area looked at");
    check_fails(void_class(bad), Error::Kind::input, "share of voids");
  }
  check_fails(void_share(square_metres(0.3), square_metres(0.25)), Error::Kind::input, "voids");
}
