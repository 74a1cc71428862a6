// Looks that hold without colour: lightness of fills, patterns of concrete.
#include "screens/glass/theme.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "base/contrast.h"

using namespace rb;
using namespace rb::screens;

namespace {

// CIE 1976 lightness of a relative luminance, as ISO/CIE 11664-4 has it (from memory).
double lightness(Colour colour) {
  const double y = relative_luminance(Rgb{colour.r, colour.g, colour.b});
  return y > 216.0 / 24389 ? 116 * std::cbrt(y) - 16 : y * 24389.0 / 27;
}

double between(Colour a, Colour b) {
  return contrast_ratio(Rgb{a.r, a.g, a.b}, Rgb{b.r, b.g, b.b});
}

}  // namespace

TEST_CASE("lightness is 0 of black, 100 of white, and about 50 of a mid grey") {
  CHECK(lightness(rgb(0x000000)) == doctest::Approx(0));
  CHECK(lightness(rgb(0xFFFFFF)) == doctest::Approx(100));
  CHECK(lightness(rgb(0x777777)) == doctest::Approx(50).epsilon(0.01));
}

TEST_CASE("in grey, stop, mend, run and act are four different greys") {
  for (const ThemeName name : {ThemeName::sun, ThemeName::night}) {
    const Theme& t = theme(name);
    const std::array<Pair, 4> fills{t.stop, t.mend, t.run, t.act};
    for (std::size_t i = 0; i < fills.size(); ++i) {
      CHECK(between(fills.at(i).ground, fills.at(i).ink) >= kContrastTextBest);
      for (std::size_t j = i + 1; j < fills.size(); ++j) {
        CAPTURE(i);
        CAPTURE(j);
        CHECK(std::abs(lightness(fills.at(i).ground) - lightness(fills.at(j).ground)) >= 10);
      }
    }
  }
}

TEST_CASE("fresh concrete is told from hard by its lines, 3 to 1 on their ground") {
  for (const ThemeName name : {ThemeName::sun, ThemeName::night}) {
    const Theme& t = theme(name);
    CHECK(between(t.fresh_line, t.fresh) >= kContrastControl);
    CHECK(between(t.fresh_line, t.void_fill) >= kContrastControl);
  }
}
