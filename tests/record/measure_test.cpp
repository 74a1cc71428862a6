#include "record/measure.h"

#include <doctest/doctest.h>

#include "record/says_text.h"

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
      {Measure::small_length, 0.127, "127", "5.0"},
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

TEST_CASE("a finding's number carries its unit, whatever the unit") {
  CHECK(finding_number(62, "s", Units::si) == "62\u00A0s");
  CHECK(finding_number(0.057, "1", Units::us) == "5.7\u00A0%");
  CHECK(finding_number(47.88026, "kPa", Units::us) == "1000\u00A0psf");
  CHECK(finding_number(3.5, "furlong", Units::si) == "3.5 furlong");
  CHECK(finding_number(2, "", Units::si) == "2");
}

TEST_CASE("a sentence of the checker is turned into the plan's units") {
  CHECK(in_units("W1 lift 2: rose 1.52 m/h over the worst 30 min; limit 1.22 m/h", Units::us) ==
        "W1 lift 2: rose 4.99 ft/h over the worst 30 min; limit 4.00 ft/h");
  CHECK(in_units("worst patch 3.05 x 0.61 m at x 0.00 m, z 6.10 m, least 40 s", Units::us) ==
        "worst patch 10.01 x 2.00 ft at x 0.00 ft, z 20.01 ft, least 40 s");
  CHECK(in_units("ticket 48 120: concrete at -5.0 degC", Units::us) ==
        "ticket 48 120: concrete at 23.0 °F");
  CHECK(in_units("7.65 m3 discharged", Units::us) == "10.01 yd³ discharged");
  CHECK(in_units("no motor reaches x 3.05 to 6.10 m", Units::us) ==
        "no motor reaches x 10.01 to 20.01 ft");
  CHECK(in_units("head of 47.9 kPa", Units::si) == "head of 47.9 kPa");
  SUBCASE("but not names, seconds, minutes and dates") {
    for (const std::string text : {"row R2 m", "W1 lift 2 motors", "90 to 120 s", "2026-03-02 m",
                                   "5 min", "ends in 7", "M12", ""}) {
      CHECK(in_units(text, Units::us) == text);
    }
  }
}
