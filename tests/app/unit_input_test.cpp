#include "cli/unit_input.h"

#include <doctest/doctest.h>

using namespace rb;
using doctest::Approx;

TEST_CASE("a number is read in the unit it was given in") {
  CHECK(in_metres(*read_length("--height", "12 ft")) == Approx(3.6576));
  CHECK(in_metres(*read_length("--height", "250mm")) == Approx(0.25));
  CHECK(in_metres_per_hour(*read_rise("--rise", "7 ft/h")) == Approx(2.1336));
  CHECK(in_kilonewtons_per_m3(*read_unit_weight("--w", "150 pcf")) == Approx(23.563).epsilon(1e-4));
  CHECK(in_kilonewtons_per_m3(*read_unit_weight("--w", "2400 kg/m3")) ==
        Approx(23.536).epsilon(1e-4));
  CHECK(read_temperature("--temp", "50 F")->degrees == Approx(10.0));
  CHECK(in_kilopascals(*read_pressure("--rating", "8.33 psi")) == Approx(57.43).epsilon(1e-3));
  CHECK(in_hertz(*read_speed("--speed", "6000 vpm")) == Approx(100));
  CHECK(in_seconds(*read_time("--set", "90 min")) == Approx(5400));
}

TEST_CASE("a number without its unit, or with another's, is refused and the option named") {
  for (const char* text : {"3", "3 h", "", "m", "three m", "nan m", "inf m", "3 m m", "0x10 m"}) {
    CAPTURE(text);
    const auto read = read_length("--height", text);
    REQUIRE_FALSE(read);
    CHECK(to_text(read.error()).find("--height") == 0);
    CHECK(to_text(read.error()).find("mm") != std::string::npos);
  }
}
