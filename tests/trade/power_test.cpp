#include "trade/motors/power.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

#include "bad_input.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

namespace {

Feed usual() {
  Feed feed;
  feed.section = square_millimetres(4.0);
  feed.length = metres(25.0);
  return feed;
}

}  // namespace

TEST_CASE("running motors add up in each of the three phases") {
  const std::vector<Current> four(4, amperes(7.5));
  const auto load = inverter_load(volts(42.0), amperes(40.0), four);
  REQUIRE(load.has_value());
  CHECK(in_amperes(load->line) == Approx(30.0));
  CHECK(in_kilovoltamperes(load->power) == Approx(std::sqrt(3.0) * 42.0 * 30.0 / 1000.0));
  CHECK(load->share == Approx(0.75));
  CHECK(inverter_load(volts(42.0), amperes(40.0), {})->share == 0.0);
  const std::vector<InverterLoad> two(2, *load);
  CHECK(*generator_share(kilovoltamperes(10.0), two) ==
        Approx(2.0 * in_kilovoltamperes(load->power) / 10.0));
}

TEST_CASE("power and line current are each other's inverse") {
  const Current line = line_current(apparent_power(volts(42.0), amperes(17.0)), volts(42.0));
  CHECK(in_amperes(line) == Approx(17.0));
}

TEST_CASE("a section between two standard ones counts as the smaller") {
  const auto at = [](double mm2) {
    return in_ohms_per_kilometre(
        *conductor_resistance(ConductorClass::class5, square_millimetres(mm2)));
  };
  CHECK(at(3.31) == Approx(7.98));  // 12 AWG is taken for 2.5 mm2
  CHECK(at(2.5) == Approx(7.98));
  CHECK(at(3.999) == Approx(7.98));
  CHECK(at(4.0) == Approx(4.95));
  CHECK(at(1000.0) == Approx(0.0287));
}

TEST_CASE("a 42 V feed of 25 m of 4 mm2 loses what the formula says, hot and at the worst angle") {
  const auto drop = voltage_drop(volts(42.0), amperes(7.5), usual());
  REQUIRE(drop.has_value());
  // 4.95 x 1.2 = 5.94 ohm/km hot, 0.08 across it.
  const double expected = std::sqrt(3.0) * 7.5 * 0.025 * std::hypot(5.94, 0.08);
  CHECK(in_volts(drop->lost) == Approx(expected));
  CHECK(in_volts(drop->at_motor) == Approx(42.0 - expected));
  CHECK(drop->share == Approx(expected / 42.0));
}

TEST_CASE("an unknown power factor loses no less than any known one") {
  std::mt19937 random(20260307);
  std::uniform_real_distribution<double> cosine(0.0, 1.0);
  std::uniform_real_distribution<double> reactance(0.0, 5.0);
  for (int i = 0; i < 500; ++i) {
    Feed feed = usual();
    feed.reactance_50hz = ohms_per_kilometre(reactance(random));
    const auto worst = voltage_drop(volts(42.0), amperes(7.5), feed);
    feed.power_factor = PowerFactor{cosine(random)};
    const auto known = voltage_drop(volts(42.0), amperes(7.5), feed);
    CHECK(known->lost <= worst->lost * (1.0 + 1e-12));
  }
}

TEST_CASE("reactance grows with the inverter's frequency") {
  Feed feed = usual();
  feed.power_factor = PowerFactor{0.0};
  const double at50 = in_volts(voltage_drop(volts(42.0), amperes(7.5), feed)->lost);
  feed.frequency = hertz(200.0);
  CHECK(in_volts(voltage_drop(volts(42.0), amperes(7.5), feed)->lost) == Approx(4.0 * at50));
}

TEST_CASE("a cable that would lose more than there is, is refused") {
  Feed feed = usual();
  feed.length = metres(400.0);
  check_fails(voltage_drop(volts(42.0), amperes(20.0), feed), Error::Kind::refused, "would lose");
}

TEST_CASE("electrical numbers that make no sense are refused by name") {
  const std::vector<Current> one{amperes(7.5)};
  for (const double bad : {kNaN, kInfinity, -1.0, 1001.0}) {
    CAPTURE(bad);
    const std::vector<Current> spoiled{amperes(7.5), amperes(bad)};
    check_fails(inverter_load(volts(bad), amperes(40.0), one), Error::Kind::input, "voltage");
    check_fails(inverter_load(volts(42.0), amperes(bad), one), Error::Kind::input, "greatest");
    check_fails(inverter_load(volts(42.0), amperes(40.0), spoiled), Error::Kind::input, "current");
    check_fails(voltage_drop(volts(bad), amperes(7.5), usual()), Error::Kind::input, "voltage");
    check_fails(voltage_drop(volts(42.0), amperes(bad), usual()), Error::Kind::input, "current");
    check_fails(generator_share(kilovoltamperes(bad * 100.0), {}), Error::Kind::input, "rating");
    const auto spoil = [&](auto&& change, const char* name) {
      Feed feed = usual();
      change(feed);
      check_fails(voltage_drop(volts(42.0), amperes(7.5), feed), Error::Kind::input, name);
    };
    spoil([&](Feed& f) { f.length = metres(bad); }, "cord length");
    spoil([&](Feed& f) { f.section = square_millimetres(bad); }, "section");
    spoil([&](Feed& f) { f.frequency = hertz(bad); }, "frequency");
    spoil([&](Feed& f) { f.reactance_50hz = ohms_per_kilometre(bad); }, "reactance");
    spoil([&](Feed& f) { f.power_factor = PowerFactor{bad}; }, "power factor");
    spoil([&](Feed& f) { f.conductor_temperature = celsius(bad * 100.0); }, "temperature");
  }
  check_fails(inverter_load(volts(42.0), amperes(0.0), one), Error::Kind::input, "greatest");
  check_fails(conductor_resistance(ConductorClass::class5, square_millimetres(0.4)),
              Error::Kind::input, "section");
}

// By hand: 4 mm2 of class 5 copper is 4.95 ohm/km at 20 degC (IEC 60228, read), 5.94 at 70 degC;
// sqrt(3) x 33.6 A x 0.025 km x 5.94 ohm/km = 8.64 V, 20.6 % of 42 V.
TEST_CASE("eight motors of 4.2 A on one 25 m trunk of 4 mm2 lose a fifth of 42 V") {
  Feed trunk;
  trunk.section = square_millimetres(4);
  trunk.length = metres(25);
  const auto all = voltage_drop(volts(42), amperes(8 * 4.2), trunk);
  REQUIRE(all);
  CHECK(all->share == Approx(0.206).epsilon(0.003));
  // One motor alone, which is what its own cord would lose.
  const auto one = voltage_drop(volts(42), amperes(4.2), trunk);
  CHECK(all->share == Approx(8 * one->share));
}

TEST_CASE("cords one after the other lose what each loses, and together no more than there is") {
  Feed trunk = usual();
  Feed own = usual();
  own.length = metres(5);
  const Stretch both[] = {{amperes(15), trunk}, {amperes(7.5), own}};
  const auto sum = drop_along(volts(42), both);
  REQUIRE(sum);
  CHECK(in_volts(sum->lost) == Approx(in_volts(voltage_drop(volts(42), amperes(15), trunk)->lost) +
                                      in_volts(voltage_drop(volts(42), amperes(7.5), own)->lost)));
  CHECK(in_volts(drop_along(volts(42), {})->lost) == 0);
  trunk.length = metres(500);
  const Stretch longer[] = {{amperes(15), trunk}, {amperes(7.5), own}};
  check_fails(drop_along(volts(42), longer), Error::Kind::refused, "would lose");
  own.section = square_millimetres(0.1);
  const Stretch thin[] = {{amperes(7.5), own}};
  check_fails(drop_along(volts(42), thin), Error::Kind::input, "section");
}
