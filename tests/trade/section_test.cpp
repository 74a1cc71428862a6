#include "trade/shape/section.h"

#include <doctest/doctest.h>

#include <numbers>

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

namespace {

double volume(Section section, double wide, double foot, double top, double height, double from,
              double to) {
  return in_cubic_metres(volume_between(section, metres(wide),
                                        {metres(foot), metres(top), metres(height)}, metres(from),
                                        metres(to)));
}

}  // namespace

// Geometry: prism, cylinder, and the frustum of a cone, pi h / 12 (D^2 + D d + d^2).
TEST_CASE("a section holds what geometry gives it") {
  CHECK(volume(Section::round, 0.9, 0.9, 0.9, 4.5, 0, 4.5) == Approx(2.863).epsilon(0.0002));
  CHECK(volume(Section::rect, 6, 0.3, 0.3, 3, 0.5, 1.5) == Approx(1.8));
  CHECK(volume(Section::rect, 6, 0.5, 0.3, 4, 0, 4) == Approx(6 * 0.4 * 4));
  CHECK(volume(Section::round, 1, 1.2, 0.6, 3, 0, 3) ==
        Approx(std::numbers::pi * 3 / 12 * (1.44 + 0.72 + 0.36)));
}

TEST_CASE("parts of a tapered section add up to the whole") {
  for (const Section section : {Section::rect, Section::round}) {
    double parts = 0;
    for (int i = 0; i < 8; ++i) {
      parts += volume(section, 1, 1.2, 0.6, 4, i * 0.5, i * 0.5 + 0.5);
    }
    CHECK(parts == Approx(volume(section, 1, 1.2, 0.6, 4, 0, 4)));
  }
}
