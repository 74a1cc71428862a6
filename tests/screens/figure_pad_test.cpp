#include "screens/entry/figure_pad.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {
std::string typed_figure(const std::string& keys) {
  std::string text;
  for (const char key : keys) press_figure_key(text, key);
  return text;
}
}  // namespace

TEST_CASE("figures are typed with one point and a sign that turns") {
  CHECK(typed_figure("18.5") == "18.5");
  CHECK(typed_figure("1..8.5") == "1.85");
  CHECK(typed_figure(".5") == "0.5");
  CHECK(typed_figure("007") == "7");
  CHECK(typed_figure("12-") == "-12");
  CHECK(typed_figure("-12-") == "12");
  CHECK(typed_figure("12<<<").empty());
  CHECK(typed_figure("1234567890").size() == 7);
}

TEST_CASE("a figure counts inside its range, in the unit shown, and a guess stands until typed") {
  CHECK(entered({.what = Figure::slump, .typed = "300"}, Units::si) == 300);
  CHECK_FALSE(entered({.what = Figure::slump, .typed = "301"}, Units::si));
  CHECK_FALSE(entered({.what = Figure::slump, .typed = "300"}, Units::us));  // inches
  CHECK_FALSE(entered({.what = Figure::slump, .typed = ""}, Units::si));
  CHECK(entered({.what = Figure::volume, .guess = 6.5}, Units::si) == 6.5);
  CHECK(entered({.what = Figure::volume, .typed = "7", .guess = 6.5}, Units::si) == 7);
  CHECK_FALSE(entered({.what = Figure::air_temp, .typed = "-"}, Units::si));
  CHECK(entered({.what = Figure::air_temp, .typed = "-12"}, Units::si) == -12);
}

// Exact by definition: 1 in = 25.4 mm, 1 yd = 0.9144 m, 1 lb = 0.45359237 kg (NIST SP 811).
TEST_CASE("figures in US units become SI and come back as they were typed") {
  CHECK(in_metres(small_length_of(5.25, Units::us)) == doctest::Approx(0.13335));
  CHECK(shown(small_length_of(5.25, Units::us), Units::us) == doctest::Approx(5.25));
  CHECK(in_cubic_metres(volume_of(8, Units::us)) == doctest::Approx(8 * 0.764554857984));
  CHECK(temperature_of(68, Units::us).degrees == doctest::Approx(20));
  CHECK(in_kilograms_per_m3(density_of(145, Units::us)) == doctest::Approx(2322.68).epsilon(1e-5));
  CHECK(shown(kilograms_per_m3(2322.68), Units::us) == doctest::Approx(145).epsilon(1e-5));
}
