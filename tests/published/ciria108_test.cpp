#include "trade/pressure/pressure_ciria108.h"

#include <doctest/doctest.h>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

struct Worked {
  FormShape shape;
  CementClass cement;
  double weight, height, rate, temperature;
};

PressureCase case_of(const Worked& w) {
  PressureCase c;
  c.shape = w.shape;
  c.cement = w.cement;
  c.unit_weight = kilonewtons_per_m3(w.weight);
  c.form_height = c.pour_height = metres(w.height);
  c.temperature = celsius(w.temperature);
  return c;
}

double kpa(const Worked& w) {
  return in(ciria108_pressure(case_of(w), metres_per_hour(w.rate)), in_kilopascals);
}

double zone(const Worked& w) {
  return in(ciria108_pressure(case_of(w), metres_per_hour(w.rate)),
            [&](Pressure p) { return in_metres(liquid_depth(kilonewtons_per_m3(w.weight), p)); });
}

double k(double temperature) {
  return ciria108_temperature_factor(celsius(temperature));
}

constexpr Worked kColumn{FormShape::column, CementClass::retarded, 25.0, 9.05, 1.0, 12.5};
constexpr Worked kWall{FormShape::wall, CementClass::high_blend, 25.0, 3.30, 3.0, 32.0};
constexpr Worked kLow{FormShape::wall, CementClass::retarded, 24.5, 2.0, 2.0, 20.0};

}  // namespace

PUBLISHED(ciria108_column, "CIRIA 108's worked column comes out as printed") {
  // C1 1.5, C2 0.45, D 25, H = h = 9.05, R 1, T 12.5.
  return {
      {"CIRIA Report 108",
       "a worked sheet after the report, which was not seen; second hand",
       Mark::second_hand,
       Kind::worked_out,
       {{"K", k(12.5), 1.60, 0.005},
        {"pressure, kN/m2", kpa(kColumn), 86.82, 0.01},
        {"D h, kN/m2", in_kilopascals(full_liquid_head(kilonewtons_per_m3(25.0), metres(9.05))),
         226.25, 1e-9},
        {"hydrostatic zone, m", zone(kColumn), 3.47, 0.005}}},
      {"CIRIA Report 108",
       "the same sheet",
       Mark::second_hand,
       Kind::transcribed,
       {{"C1 column", ciria108_shape_coefficient(FormShape::column), 1.5, 1e-12},
        {"C2 retarded", ciria108_cement_coefficient(CementClass::retarded), 0.45, 1e-12},
        {"C2 normal", ciria108_cement_coefficient(CementClass::plain), 0.30, 1e-12},
        {"C2 heavily retarded", ciria108_cement_coefficient(CementClass::high_blend), 0.60, 1e-12},
        {"C1 wall", ciria108_shape_coefficient(FormShape::wall), 1.0, 1e-12}}}};
}

PUBLISHED(ciria108_wall, "CIRIA 108's worked wall comes out as printed") {
  // C1 1, D 25, H = h = 3.30, R 3, T 32. The sheet's copy is damaged and C2 cannot be read; 0.60
  // gives its pressure, 53.87.
  return {{"CIRIA Report 108",
           "another worked sheet, half legible; second hand",
           Mark::second_hand,
           Kind::worked_out,
           {{"K", k(32.0), 0.56, 0.005},
            {"pressure, kN/m2", kpa(kWall), 53.87, 0.01},
            {"D h, kN/m2", in_kilopascals(full_liquid_head(kilonewtons_per_m3(25.0), metres(3.3))),
             82.50, 1e-9},
            {"hydrostatic zone, m", zone(kWall), 2.15, 0.006}}},
          // Wall 2 m, D 24.5, R 2, T 20, C2 0.45: K 1.00 and 24.5 x 1.758.
          {"CIRIA Report 108",
           "an example told of the report; second hand, weak",
           Mark::second_hand,
           Kind::worked_out,
           {{"K", k(20.0), 1.00, 1e-12}, {"pressure / D, m", zone(kLow), 1.758, 0.001}}}};
}

PUBLISHED(ciria108_computed, "CIRIA 108's formula gives the values worked out apart") {
  const auto wall = [](CementClass cement, double rate, double height, double t) {
    return kpa({FormShape::wall, cement, 25.0, height, rate, t});
  };
  return {{"CIRIA Report 108",
           "formula second hand; values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"K 5", k(5), 2.939, 0.0006},
            {"K 10", k(10), 1.917, 0.0006},
            {"K 15", k(15), 1.349, 0.0006},
            {"K 25", k(25), 0.771, 0.0006},
            {"K 30", k(30), 0.6125, 0.0001},
            {"R 1, H 3, T 15", wall(CementClass::plain, 1, 3, 15), 39.30, 0.01},
            {"R 2, H 4, T 10", wall(CementClass::retarded, 2, 4, 10), 70.04, 0.01},
            {"R 0.5, H 6, T 5", wall(CementClass::plain, 0.5, 6, 5), 68.39, 0.01},
            {"R 5, H 3, T 15", wall(CementClass::plain, 5, 3, 15), 64.74, 0.01},
            {"R 10, H 6, T 10", wall(CementClass::high_blend, 10, 6, 10), 127.50, 0.01},
            {"R 16, H 3: C1 sqrt(R) over H", wall(CementClass::plain, 16, 3, 15), 75.0, 1e-9}}}};
}
