#include "base/contrast.h"

#include <doctest/doctest.h>

using namespace rb;
using doctest::Approx;

// The values printed by others are in tests/published/contrast_test.cpp.

TEST_CASE("contrast is the same whichever colour is on top, and 1 for a colour on itself") {
  const Rgb sand{210, 180, 140};
  const Rgb night{20, 24, 40};
  CHECK(contrast_ratio(sand, night) == contrast_ratio(night, sand));
  CHECK(contrast_ratio(sand, sand) == Approx(1.0));
}

TEST_CASE("luminance runs from 0 for black to 1 for white and grows with every channel") {
  CHECK(relative_luminance({0, 0, 0}) == 0.0);
  CHECK(relative_luminance({255, 255, 255}) == Approx(1.0));
  for (int v = 0; v < 255; ++v) {
    const auto low = static_cast<std::uint8_t>(v);
    const auto high = static_cast<std::uint8_t>(v + 1);
    CHECK(relative_luminance({low, 90, 90}) < relative_luminance({high, 90, 90}));
    CHECK(relative_luminance({90, low, 90}) < relative_luminance({90, high, 90}));
    CHECK(relative_luminance({90, 90, low}) < relative_luminance({90, 90, high}));
  }
}
