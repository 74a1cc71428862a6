#include "trade/pressure/pressure.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "bad_input.h"
#include "trade/pressure/pressure_aci347.h"
#include "trade/pressure/pressure_ciria108.h"
#include "trade/pressure/pressure_din18218.h"

using namespace rb;
using namespace rb::trade;
using doctest::Approx;

namespace {

constexpr PressureMethod kMethods[] = {PressureMethod::aci347, PressureMethod::ciria108,
                                       PressureMethod::din18218};
constexpr CementClass kCements[] = {CementClass::plain, CementClass::retarded, CementClass::blended,
                                    CementClass::blended_retarded, CementClass::high_blend};

PressureCase usual() {
  PressureCase c;
  c.form_height = metres(4.0);
  c.pour_height = metres(4.0);
  return c;
}

// Any case all three methods cover.
PressureCase some_case(std::mt19937& random) {
  const auto between = [&](double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
  };
  PressureCase c;
  c.shape = between(0, 1) < 0.3 ? FormShape::column : FormShape::wall;
  c.unit_weight = kilonewtons_per_m3(between(18.0, 30.0));
  c.form_height = metres(between(0.5, 12.0));
  c.pour_height = c.form_height * between(0.3, 1.0);
  c.temperature = celsius(between(2.0, 38.0));
  c.slump = millimetres(between(20.0, 175.0));
  c.cement = kCements[std::uniform_int_distribution<int>(0, 4)(random)];
  c.set_time = hours(between(2.0, 20.0));
  return c;
}

}  // namespace

TEST_CASE("names of methods, cements and shapes are read back as written") {
  for (const auto method : kMethods) CHECK(parse_pressure_method(to_text(method)) == method);
  for (const auto cement : kCements) CHECK(parse_cement_class(to_text(cement)) == cement);
  for (const auto shape : {FormShape::wall, FormShape::column}) {
    CHECK(parse_form_shape(to_text(shape)) == shape);
  }
  CHECK(to_text(CementClass::blended_retarded) == "blended-retarded");
  CHECK(to_text(CementClass::high_blend) == "high-blend");
  CHECK_FALSE(parse_cement_class("blended_retarded"));
  CHECK_FALSE(parse_pressure_method(""));
  CHECK_FALSE(parse_form_shape("deck"));
}

TEST_CASE("pressure never falls as the rate grows and never exceeds the liquid head") {
  std::mt19937 random(20260301);
  for (int i = 0; i < 2000; ++i) {
    const PressureCase c = some_case(random);
    const Pressure head = full_liquid_head(c.unit_weight, c.pour_height);
    std::vector<double> rates{
        0.0, 2.1, 4.5, 7.0, std::nextafter(2.1, 0.0), std::nextafter(4.5, 9.0)};
    std::uniform_real_distribution<double> rate(0.0, 12.0);
    for (int k = 0; k < 20; ++k) rates.push_back(rate(random));
    std::ranges::sort(rates);
    for (const auto method : kMethods) {
      CAPTURE(i);
      CAPTURE(to_text(method));
      Pressure before = kilopascals(0.0);
      for (const double r : rates) {
        const auto p = method_pressure(method, c, metres_per_hour(r));
        if (method == PressureMethod::din18218 && metres_per_hour(r) > metres_per_hour(7.0)) {
          CHECK_FALSE(p.has_value());
          continue;
        }
        REQUIRE(p.has_value());
        CHECK(*p >= before * (1.0 - 1e-14));
        CHECK(*p <= head);
        before = *p;
      }
    }
  }
}

TEST_CASE("the rate for a rating is the last one that does not exceed it") {
  std::mt19937 random(20260302);
  std::uniform_real_distribution<double> share(0.05, 1.2);
  int found = 0;
  for (int i = 0; i < 3000; ++i) {
    const PressureCase c = some_case(random);
    const Pressure head = full_liquid_head(c.unit_weight, c.pour_height);
    const Pressure rating = head * share(random);
    for (const auto method : kMethods) {
      CAPTURE(i);
      CAPTURE(to_text(method));
      const auto rise = rise_for_rating(method, c, rating);
      REQUIRE(rise.has_value());
      if (!*rise) {
        CHECK(rating >= head);
        continue;
      }
      CHECK(rating < head);
      const auto above =
          method_pressure(method, c, **rise * (1.0 + 1e-12) + metres_per_hour(1e-12));
      CHECK((!above || *above > rating));
      const auto at = method_pressure(method, c, **rise);
      REQUIRE(at.has_value());
      if (**rise > metres_per_hour(0.0)) {
        CHECK(*at <= rating);
        ++found;
      }
    }
  }
  CHECK(found > 2000);  // the cases drawn do test it
}

TEST_CASE("the rate for the pressure at a rate is that rate, where pressure grows") {
  std::mt19937 random(20260303);
  std::uniform_real_distribution<double> rate(0.05, 6.5);
  int compared = 0;
  for (int i = 0; i < 2000; ++i) {
    const PressureCase c = some_case(random);
    const Velocity r = metres_per_hour(rate(random));
    for (const auto method : kMethods) {
      const auto p = method_pressure(method, c, r);
      const auto below = method_pressure(method, c, r * 0.999);
      const auto above = method_pressure(method, c, r * 1.001);
      if (!p || !below || !above || *below >= *p || *above <= *p) continue;  // floor, cap or range
      const auto back = rise_for_rating(method, c, *p);
      REQUIRE(back.has_value());
      REQUIRE(back->has_value());
      CAPTURE(i);
      CAPTURE(to_text(method));
      CHECK(**back / r == Approx(1.0).epsilon(1e-11));
      ++compared;
    }
  }
  CHECK(compared > 2000);
}

TEST_CASE("ACI 347 changes formula at 2.1 m/h, and over 4.5 m/h a wall is liquid") {
  const PressureCase c = usual();
  const double below = in_kilopascals(*aci347_pressure(c, metres_per_hour(2.0999999)));
  const double at = in_kilopascals(*aci347_pressure(c, metres_per_hour(2.1)));
  // 7.2 + 785 x 2.1/37.8 and 7.2 + (1156 + 244 x 2.1)/37.8, both x 25 kN/m3's Cw.
  const double cw = 25.0 / 9.80665 * 1000.0 / 2320.0;
  CHECK(below == Approx(cw * 50.811111).epsilon(1e-6));
  CHECK(at == Approx(cw * 51.337566).epsilon(1e-6));
  CHECK(in_kilopascals(*aci347_pressure(c, metres_per_hour(4.5))) < 99.0);
  CHECK(in_kilopascals(*aci347_pressure(c, metres_per_hour(4.6))) == Approx(100.0));

  SUBCASE("a rating within the jump allows every rate short of 2.1 m/h") {
    const auto rise = rise_for_rating(PressureMethod::aci347, c, kilopascals((below + at) / 2.0));
    CHECK(**rise < metres_per_hour(2.1));
    CHECK(in_metres_per_hour(**rise) == Approx(2.1).epsilon(1e-12));
  }
  SUBCASE("a rating between the second formula and the head allows 4.5 m/h") {
    const auto rise = rise_for_rating(PressureMethod::aci347, c, kilopascals(99.0));
    CHECK(**rise == metres_per_hour(4.5));
  }
  SUBCASE("a placement over 4.2 m takes the second formula at any rate") {
    PressureCase tall = c;
    tall.form_height = tall.pour_height = metres(4.3);
    CHECK(in_kilopascals(*aci347_pressure(tall, metres_per_hour(1.0))) ==
          Approx(cw * (7.2 + 1400.0 / 37.8)).epsilon(1e-9));
  }
  SUBCASE("a column keeps the first formula at any rate and height") {
    PressureCase column = c;
    column.shape = FormShape::column;
    column.form_height = column.pour_height = metres(8.0);
    CHECK(in_kilopascals(*aci347_pressure(column, metres_per_hour(5.0))) ==
          Approx(cw * (7.2 + 785.0 * 5.0 / 37.8)).epsilon(1e-9));
  }
}

TEST_CASE("a rating the form keeps at any rate sets no limit, one under the least sets zero") {
  const PressureCase c = usual();  // liquid head 100 kPa
  for (const auto method : kMethods) {
    CAPTURE(to_text(method));
    const auto any = rise_for_rating(method, c, kilopascals(100.0));
    REQUIRE(any.has_value());
    CHECK_FALSE(any->has_value());
    const auto none = rise_for_rating(method, c, kilopascals(5.0));
    REQUIRE(none.has_value());
    REQUIRE(none->has_value());
    CHECK(**none == metres_per_hour(0.0));
  }
  // DIN 18218 ends at 7 m/h: a rating above its pressure there allows 7 m/h, not more.
  PressureCase tall = c;
  tall.form_height = tall.pour_height = metres(10.0);
  CHECK(**rise_for_rating(PressureMethod::din18218, tall, kilopascals(240.0)) ==
        metres_per_hour(7.0));
}

TEST_CASE("a rating equal to the least pressure allows the rates at which the least governs") {
  const PressureCase c = usual();
  const Pressure least = *aci347_pressure(c, metres_per_hour(0.0));
  const auto rise = rise_for_rating(PressureMethod::aci347, c, least);
  REQUIRE(rise.has_value());
  REQUIRE(rise->has_value());
  // 7.2 + 785 R/37.8 reaches 30 kPa (both x Cw) at 1.0979 m/h.
  CHECK(in_metres_per_hour(**rise) == Approx((30.0 - 7.2) * 37.8 / 785.0).epsilon(1e-9));
}

TEST_CASE("a method refuses what it does not cover and says to assume a full liquid head") {
  const auto refuses = [](PressureMethod method, const PressureCase& c, double rise,
                          const std::string& word) {
    const auto p = method_pressure(method, c, metres_per_hour(rise));
    check_fails(p, Error::Kind::refused, word);
    check_fails(p, Error::Kind::refused, "full liquid head");
  };
  PressureCase wet = usual();
  wet.slump = millimetres(176.0);
  refuses(PressureMethod::aci347, wet, 1.0, "slump 176 mm");
  wet.slump = millimetres(221.0);
  refuses(PressureMethod::ciria108, wet, 1.0, "slump 221 mm");
  PressureCase slow = usual();
  slow.set_time = hours(20.5);
  refuses(PressureMethod::din18218, slow, 1.0, "20.5 h");
  refuses(PressureMethod::din18218, usual(), 7.01, "7.01 m/h");

  PressureCase edge = usual();
  edge.slump = millimetres(175.0);
  edge.set_time = hours(20.0);
  CHECK(method_pressure(PressureMethod::aci347, edge, metres_per_hour(1.0)).has_value());
  CHECK(method_pressure(PressureMethod::din18218, edge, metres_per_hour(7.0)).has_value());

  wet.slump = millimetres(190.0);
  check_fails(rise_for_rating(PressureMethod::aci347, wet, kilopascals(50.0)), Error::Kind::refused,
              "slump");
}

TEST_CASE("numbers that make no sense are refused by name") {
  struct Bad {
    const char* name;
    void (*spoil)(PressureCase&, double);
    std::vector<double> values;
  };
  const Bad table[] = {
      {"unit weight",
       [](PressureCase& c, double v) { c.unit_weight = kilonewtons_per_m3(v); },
       {kNaN, kInfinity, -25.0, 0.0, 9.9, 45.1, 2400.0}},
      {"form height",
       [](PressureCase& c, double v) { c.form_height = metres(v); },
       {kNaN, kInfinity, -4.0, 0.0, 51.0}},
      {"pour height",
       [](PressureCase& c, double v) { c.pour_height = metres(v); },
       {kNaN, kInfinity, -0.1, 51.0}},
      {"concrete temperature",
       [](PressureCase& c, double v) { c.temperature = celsius(v); },
       {kNaN, -kInfinity, -0.1, 50.1, 68.0}},
      {"slump",
       [](PressureCase& c, double v) { c.slump = metres(v); },
       {kNaN, kInfinity, -0.01, 0.31, 4.0}},
  };
  for (const Bad& bad : table) {
    for (const double value : bad.values) {
      CAPTURE(value);
      PressureCase c = usual();
      bad.spoil(c, value);
      for (const auto method : kMethods) {
        check_fails(method_pressure(method, c, metres_per_hour(1.0)), Error::Kind::input, bad.name);
        check_fails(rise_for_rating(method, c, kilopascals(50.0)), Error::Kind::input, bad.name);
      }
    }
  }
  for (const double value : {kNaN, kInfinity, -1.0, 3601.0}) {
    CAPTURE(value);
    for (const auto method : kMethods) {
      check_fails(method_pressure(method, usual(), metres_per_hour(value)), Error::Kind::input,
                  "rate of rise");
    }
  }
  for (const double value : {kNaN, kInfinity, -1.0, 0.0, 10001.0}) {
    CAPTURE(value);
    check_fails(rise_for_rating(PressureMethod::aci347, usual(), kilopascals(value)),
                Error::Kind::input, "form rating");
  }
  for (const double value : {kNaN, kInfinity, -1.0, 0.0, 101.0}) {
    CAPTURE(value);
    PressureCase c = usual();
    c.set_time = hours(value);
    check_fails(method_pressure(PressureMethod::din18218, c, metres_per_hour(1.0)),
                Error::Kind::input, "time to initial set");
  }
}

TEST_CASE("more heat, less pressure; a slower binder or a wetter mix, more") {
  for (const auto method : {PressureMethod::aci347, PressureMethod::ciria108}) {
    CAPTURE(to_text(method));
    PressureCase c = usual();
    c.form_height = c.pour_height = metres(6.0);
    const auto at = [&](double warmth, CementClass cement) {
      c.temperature = celsius(warmth);
      c.cement = cement;
      return *method_pressure(method, c, metres_per_hour(1.5));
    };
    CHECK(at(10.0, CementClass::plain) > at(20.0, CementClass::plain));
    CHECK(at(10.0, CementClass::retarded) > at(10.0, CementClass::plain));
    CHECK(at(10.0, CementClass::blended_retarded) > at(10.0, CementClass::blended));
  }
  PressureCase c = usual();
  c.form_height = c.pour_height = metres(6.0);
  Pressure before = kilopascals(0.0);
  for (const double slump : {10.0, 60.0, 120.0, 180.0, 220.0, 250.0}) {
    CAPTURE(slump);
    c.slump = millimetres(slump);
    const auto p = method_pressure(PressureMethod::din18218, c, metres_per_hour(2.0));
    REQUIRE(p.has_value());
    CHECK(*p > before);
    before = *p;
  }
}

TEST_CASE("a slump falls into the softer flow class when in doubt") {
  const std::pair<double, FlowClass> table[] = {
      {0.0, FlowClass::f1},   {24.9, FlowClass::f1},   {25.0, FlowClass::f2},
      {74.9, FlowClass::f2},  {75.0, FlowClass::f3},   {134.9, FlowClass::f3},
      {135.0, FlowClass::f4}, {194.9, FlowClass::f4},  {195.0, FlowClass::f5},
      {235.0, FlowClass::f6}, {260.0, FlowClass::scc}, {300.0, FlowClass::scc}};
  for (const auto& [slump, flow] : table) {
    const auto& tried = slump;
    CAPTURE(tried);
    CHECK(to_text(flow_class_for(millimetres(slump))) == to_text(flow));
  }
}

TEST_CASE("DIN 18218 scales a heavy concrete up and a light one not down") {
  PressureCase c = usual();
  const auto at = [&](double weight) {
    c.unit_weight = kilonewtons_per_m3(weight);
    return in_kilopascals(*din18218_pressure(FlowClass::f3, c, metres_per_hour(2.0)));
  };
  CHECK(at(25.0) == Approx(46.0));
  CHECK(at(20.0) == Approx(46.0));
  CHECK(at(30.0) == Approx(46.0 * 1.2));
}

TEST_CASE("a shallow pour bears no more than its own liquid head, whatever the least value") {
  PressureCase c = usual();
  c.pour_height = metres(0.5);
  for (const auto method : kMethods) {
    CAPTURE(to_text(method));
    CHECK(in_kilopascals(*method_pressure(method, c, metres_per_hour(2.0))) == Approx(12.5));
  }
}

TEST_CASE("external vibration is answered with the full liquid head, and only then") {
  PressureCase c = usual();
  for (const auto method : kMethods) {
    c.external_vibration = false;
    CHECK_FALSE(vibration_caution(method, c));
    c.external_vibration = true;
    const auto caution = vibration_caution(method, c);
    REQUIRE(caution);
    CHECK(caution->find("full liquid head") != std::string::npos);
  }
}
