// Single formulas on the command line: how they end. What they print is looked at by eye; the
// figures themselves are tested where they are reckoned.
#include "cli/calc.h"

#include <doctest/doctest.h>

#include "cli/unit_input.h"

using namespace rb;

TEST_CASE(
    "the allowed rise ends well, with a finding where the form allows none, or as bad usage") {
  RiseWish wish;
  wish.form.height = "3.6 m";
  wish.form.rating = "60 kPa";
  CHECK(calc_rise(wish) == Exit::fine);
  wish.length = "12 m";
  wish.thickness = "12 in";
  CHECK(calc_rise(wish) == Exit::fine);
  wish.form.rating = "120 kPa";  // bears the full liquid head
  CHECK(calc_rise(wish) == Exit::fine);
  wish.form.rating = "25 kPa";
  CHECK(calc_rise(wish) == Exit::findings);
  wish.form.slump = "200 mm";  // the method does not hold
  CHECK(calc_rise(wish) == Exit::findings);
  wish.form.rating = "25";
  CHECK(calc_rise(wish) == Exit::usage);
}

TEST_CASE("the wait before a row runs again ends well, with a finding where it never may") {
  WaitWish wish;
  wish.placed = "3 m";
  wish.rise = "1 m/h";
  wish.low = "0.2 m";
  wish.high = "1.2 m";
  wish.rating = "60 kPa";
  wish.initial_set = "5 h";
  CHECK(calc_wait(wish) == Exit::fine);
  wish.rating = "40 kPa";
  CHECK(calc_wait(wish) == Exit::findings);
  wish.temperature = "12";
  CHECK(calc_wait(wish) == Exit::usage);
}

TEST_CASE("the size of a layout ends well, or says what is wrong with it") {
  SizeWish wish;
  wish.length = "39 ft";
  wish.height = "12 ft";
  wish.thickness = "12 in";
  wish.force = "900 lbf";
  CHECK(calc_size(wish) == Exit::fine);
  wish.rating = "5 kPa";
  CHECK(calc_size(wish) == Exit::usage);
}

TEST_CASE("setting is reckoned over one temperature or a history of them") {
  SetWish wish{"5 h", "20 C", "12 C", ""};
  CHECK(calc_set(wish) == Exit::fine);
  wish.temperature = "";
  CHECK(calc_set(wish) == Exit::usage);
  wish.history = "0 h 18 C, 3 h 75 F";
  CHECK(calc_set(wish) == Exit::fine);
  wish.q = "5000";
  CHECK(calc_set(wish) == Exit::fine);
  wish.q = "fast";
  CHECK(calc_set(wish) == Exit::usage);
  wish.q = "50";
  CHECK(calc_set(wish) == Exit::usage);
  wish.q = "";
  for (const char* bad : {"18 C", "0 h 18", "3 h 18 C, 1 h 20 C", ","}) {
    CAPTURE(bad);
    wish.history = bad;
    CHECK(calc_set(wish) == Exit::usage);
  }
}

TEST_CASE("lifts that cannot be knitted in time are a finding") {
  KnitWish wish;
  wish.set = {"5 h", "20 C", "20 C", ""};
  wish.lift = "500 mm";
  wish.rise = "1.5 m/h";
  CHECK(calc_knit(wish) == Exit::fine);
  wish.rise = "0.1 m/h";
  CHECK(calc_knit(wish) == Exit::findings);
  wish.rows = "none";
  CHECK(calc_knit(wish) == Exit::usage);
}

TEST_CASE("more amps than an inverter or a generator gives are a finding") {
  AmpsWish wish;
  wish.motors = "8";
  wish.amps = "4.2 A";
  wish.inverter = "40 A";
  CHECK(calc_amps(wish) == Exit::fine);
  wish.generator = "10 kVA";
  wish.inverters = "4";
  CHECK(calc_amps(wish) == Exit::fine);  // 4 x 2.4 kVA
  wish.inverters = "5";
  CHECK(calc_amps(wish) == Exit::findings);
  wish.generator = "";
  wish.motors = "10";
  CHECK(calc_amps(wish) == Exit::findings);
  wish.motors = "10.5";
  CHECK(calc_amps(wish) == Exit::usage);
}

TEST_CASE("a volume, a mass an area, a rate and a power are read in their units") {
  CHECK(in_cubic_metres(*read_volume("--load", "8 yd3")) == doctest::Approx(6.1164).epsilon(1e-4));
  CHECK(in_cubic_metres(*read_volume("--load", "6000 L")) == doctest::Approx(6));
  CHECK(in_kilograms_per_m2(*read_mass_per_area("--form-mass", "10 lb/ft2")) ==
        doctest::Approx(48.824).epsilon(1e-4));
  CHECK(read_per_hour("--trucks", "4 /h")->times == 4);
  CHECK(trade::in_kilovoltamperes(*read_apparent_power("--generator", "10 kVA")) ==
        doctest::Approx(10));
  CHECK_FALSE(read_count("--crew", "2.5"));
}
