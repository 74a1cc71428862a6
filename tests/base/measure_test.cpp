#include "base/measure.h"

#include <doctest/doctest.h>

using namespace rb;

TEST_CASE("numbers are shown in the plan's units") {
  struct Case {
    Measure measure;
    double si;
    const char* in_si;
    const char* in_us;
  };
  // Factors of NIST SP 811: 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 psf = 0.04788026 kPa,
  // 1 yd3 = 0.7645549 m3, 1 lb/ft3 = 16.01846 kg/m3, 1 lbf/ft3 = 0.1570875 kN/m3.
  const Case cases[] = {
      {Measure::length, 3.048, "3.05", "10.00"},
      {Measure::small_length, 0.127, "127", "5.00"},
      {Measure::pressure, 47.88026, "47.9", "1000"},
      {Measure::volume, 7.645549, "7.65", "10.00"},
      {Measure::rate, 1.524, "1.52", "5.00"},
      {Measure::temperature, 20, "20.0", "68.0"},
      {Measure::temperature, -40, "-40.0", "-40.0"},
      {Measure::unit_weight, 23.563125, "23.6", "150"},
      {Measure::density, 2402.769, "2403", "150.0"},
      {Measure::share, 0.057, "5.7", "5.7"},
      {Measure::age, 1740, "29", "29"},
      {Measure::long_span, 19800, "5.5", "5.5"},
      {Measure::speed, 6000, "6000", "6000"},
  };
  for (const Case& c : cases) {
    CAPTURE(unit_text(c.measure, Units::si));
    CHECK(shown_text(c.si, c.measure, Units::si) == c.in_si);
    CHECK(shown_text(c.si, c.measure, Units::us) == c.in_us);
  }
}

TEST_CASE("nothing is shown as minus zero") {
  CHECK(shown_text(-0.001, Measure::length, Units::si) == "0.00");
  CHECK(shown_text(-0.006, Measure::length, Units::si) == "-0.01");
}

TEST_CASE("a figure carries its unit and does not part from it") {
  CHECK(amount_text(amount(seconds(62)), Units::si) == "62\u00A0s");
  CHECK(amount_text(share(0.057), Units::us) == "5.7\u00A0%");
  CHECK(amount_text(amount(psf(1000)), Units::us) == "1000\u00A0psf");
  CHECK(amount_text(amount(celsius(-5)), Units::us) == "23.0\u00A0\u00B0F");
  CHECK(amount_text(Amount{Measure::number, 2}, Units::si) == "2");
  CHECK(amount_text(count(3), Units::us) == "3");
}

TEST_CASE("a limit is rounded down and a measure up, but for the rounding of a sum") {
  CHECK(shown_text(1.801, Measure::rate, Units::si, Rounding::up) == "1.81");
  CHECK(shown_text(1.809, Measure::rate, Units::si, Rounding::down) == "1.80");
  CHECK(shown_text(1.8 + 1e-12, Measure::rate, Units::si, Rounding::up) == "1.80");
  CHECK(shown_text(1.8 - 1e-12, Measure::rate, Units::si, Rounding::down) == "1.80");
  CHECK(shown_text(-0.001, Measure::length, Units::si, Rounding::up) == "0.00");
}

TEST_CASE("every unit of a script stands for one measure, and back") {
  for (const char* unit : {"s", "m", "m3", "m/h", "kPa", "kN/m3", "kg/m3", "kg/m2", "degC", "vpm",
                           "1", "%", "deg", "A", "V"}) {
    CAPTURE(unit);
    const auto measure = measure_of_unit(unit);
    REQUIRE(measure);
    CHECK(std::string{script_unit(*measure)} == unit);
  }
  CHECK_FALSE(measure_of_unit("furlong"));
}

TEST_CASE("a value prints itself, unit and all, where a test fails") {
  CHECK(doctest::toString(metres(3.001)) == "3.001 m");
  CHECK(doctest::toString(std::optional{seconds(1.5)}) == "1.5 s");
  CHECK(doctest::toString(std::optional<Length>{}) == "none");
  CHECK(doctest::toString(celsius(18)) == "18 \u00B0C");
  CHECK(doctest::toString(ElementId{"Wall 3 m"}) == "\"Wall 3 m\"");
}
