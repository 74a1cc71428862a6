// Single formulas on the command line: how they end. What they print is looked at by eye; the
// figures themselves are tested where they are reckoned.
#include "cli/calc.h"

#include <doctest/doctest.h>

#include <unistd.h>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <vector>

#include "cli/cli.h"
#include "cli/unit_input.h"
#include "temp_folder.h"

using namespace rb;

namespace {

// What a command prints.
std::string printed(std::vector<std::string> words) {
  const test::TempFolder folder;
  const std::string file = (folder.path / "out").string();
  std::fflush(stdout);
  const int before = dup(STDOUT_FILENO);
  REQUIRE(std::freopen(file.c_str(), "w", stdout) != nullptr);
  std::vector<char*> argv;
  argv.reserve(words.size());
  for (std::string& word : words) argv.push_back(word.data());
  const int exit = run_cli(static_cast<int>(argv.size()), argv.data());
  std::fflush(stdout);
  dup2(before, STDOUT_FILENO);
  close(before);
  CHECK(exit != 2);
  std::ifstream in{file};
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

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
  wish.derate = "100 %";
  wish.inverters = "4";
  CHECK(calc_amps(wish) == Exit::fine);  // 4 x 2.4 kVA
  wish.inverters = "5";
  CHECK(calc_amps(wish) == Exit::findings);
  wish.inverters = "4";
  wish.derate = "80 %";  // 8 kVA
  CHECK(calc_amps(wish) == Exit::findings);
  for (const char* bad : {"80", "0 %", "120 %"}) {
    wish.derate = bad;
    CHECK(calc_amps(wish) == Exit::usage);
  }
  wish.derate = "80 %";
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

TEST_CASE("a trunk loses what goes through it, a motor's own cord what the motor draws") {
  VoltsWish wish;
  wish.amps = "4.2 A";
  CHECK(calc_volts(wish) == Exit::usage);  // no cord at all
  wish.motors = "8";
  wish.section = "4 mm2";
  wish.length = "25 m";
  CHECK(calc_volts(wish) == Exit::usage);  // many motors on one's own cord
  wish.trunk_section = "4 mm2";
  CHECK(calc_volts(wish) == Exit::usage);  // a trunk of no length
  wish.trunk_length = "25 m";
  CHECK(calc_volts(wish) == Exit::fine);
  // 8.64 V of 42 V: as worked by hand in the tests of trade.
  const std::string told = printed({"risebook", "calc", "volts", "--amps", "4.2 A", "--motors", "8",
                                    "--trunk-section", "4 mm2", "--trunk-length", "25 m"});
  CAPTURE(told);
  CHECK(told.find("33.6 A") != std::string::npos);
  CHECK(told.find("(20.6 %)") != std::string::npos);
}

TEST_CASE("every formula tells each default it took, with its value and unit") {
  struct Told {
    std::vector<std::string> words, defaults;
  };
  const Told all[] = {
      {{"pressure", "--height", "3.6 m", "--rise", "1.5 m/h"},
       {"--method aci347", "--shape wall", "--cement plain", "--unit-weight 24 kN/m3",
        "--temp 20 C", "--slump 100 mm", "--set-time 5 h", "external vibration yes",
        "height of the pour that of the form"}},
      {{"rise", "--height", "3.6 m", "--rating", "60 kPa"},
       {"--method aci347", "--unit-weight 24 kN/m3", "--temp 20 C", "--slump 100 mm",
        "external vibration yes"}},
      {{"wait", "--placed", "3 m", "--rise", "1 m/h", "--low", "0.2 m", "--high", "1.2 m",
        "--rating", "60 kPa", "--initial-set", "5 h"},
       {"--unit-weight 25 kN/m3", "--reference 20 C", "--temp 20 C", "--since 0 min",
        "Q of the mix"}},
      {{"size", "--length", "12 m", "--height", "3.6 m", "--thickness", "300 mm", "--force",
        "4 kN"},
       {"--unit-weight 25 kN/m3", "--form-mass 60 kg/m2", "--reach-x 600 mm", "--reach-z 600 mm",
        "--lift 500 mm", "No --reach-pressure given", "No --rating given",
        "overlap of rows 0.150 m", "thinnest lift 0.250 m", "kept of the rating 5 %"}},
      {{"set", "--initial-set", "5 h", "--temp", "12 C"}, {"--reference 20 C", "No --q given"}},
      {{"knit", "--initial-set", "5 h", "--temp", "12 C", "--lift", "500 mm", "--rise", "1.5 m/h"},
       {"--reference 20 C", "--run 105 s", "--rows 1", "No --q given"}},
      {{"volts", "--amps", "7.5 A", "--section", "4 mm2", "--length", "25 m"},
       {"--volts 42 V", "--speed 6000 vpm", "--motors 1", "conductor temperature 70.0 C",
        "reactance 0.08 ohm/km", "class 5", "power factor"}},
      {{"amps", "--motors", "8", "--amps", "4.2 A", "--inverter", "40 A", "--generator", "20 kVA"},
       {"--volts 42 V", "--inverters 1", "--derate 80 %", "our own choice"}},
  };
  for (const Told& formula : all) {
    std::vector<std::string> words{"risebook", "calc"};
    words.insert(words.end(), formula.words.begin(), formula.words.end());
    const std::string told = printed(words);
    CAPTURE(told);
    CHECK(told.find("efault") != std::string::npos);
    for (const std::string& taken : formula.defaults) {
      CAPTURE(taken);
      CHECK(told.find(taken) != std::string::npos);
    }
  }
  // What was given is no default.
  CHECK(printed({"risebook", "calc", "volts", "--amps", "7.5 A", "--section", "4 mm2", "--length",
                 "25 m", "--volts", "48 V"})
            .find("--volts") == std::string::npos);
}
