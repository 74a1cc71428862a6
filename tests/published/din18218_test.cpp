#include "trade/pressure/pressure_din18218.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

// A wall so tall that the liquid head is out of the way.
double kpa_2010(FlowClass flow, double set_hours, double rate) {
  PressureCase c;
  c.form_height = c.pour_height = metres(40.0);
  c.set_time = hours(set_hours);
  return in(din18218_pressure(flow, c, metres_per_hour(rate)), in_kilopascals);
}

struct Line {
  double rate;
  double kpa[5];  // at 25, 20, 15, 10, 5 degC
};

std::vector<Row> rows_1980(Consistency1980 consistency, const std::vector<Line>& lines) {
  constexpr double kCelsius[] = {25.0, 20.0, 15.0, 10.0, 5.0};
  std::vector<Row> rows;
  for (const Line& line : lines) {
    for (int i = 0; i < 5; ++i) {
      const auto p =
          din18218_1980_pressure(consistency, metres_per_hour(line.rate), celsius(kCelsius[i]));
      // The print rounds unevenly (19.95 stands as 19.9), hence 0.1.
      rows.push_back({fmt::format("{} m/h, {} degC", line.rate, kCelsius[i]), in(p, in_kilopascals),
                      line.kpa[i], 0.1});
    }
  }
  return rows;
}

}  // namespace

PUBLISHED(din18218_1980, "DIN 18218 of 1980 gives the table of a formwork handbook") {
  const char* place = "table as a formwork handbook prints it; not seen, second hand";
  return {{"DIN 18218:1980", place, Mark::second_hand, Kind::worked_out,
           rows_1980(Consistency1980::k1, {{0.5, {16.5, 20.0, 23.5, 27.0, 30.6}},
                                           {1.0, {18.2, 22.1, 26.0, 29.9, 33.8}},
                                           {1.5, {19.9, 24.2, 28.5, 32.8, 37.1}},
                                           {2.0, {21.7, 26.4, 31.0, 35.7, 40.3}},
                                           {2.5, {23.5, 28.5, 33.5, 38.5, 43.6}},
                                           {3.0, {25.2, 30.6, 36.0, 41.4, 46.8}}})},
          {"DIN 18218:1980", place, Mark::second_hand, Kind::worked_out,
           rows_1980(Consistency1980::k2, {{0.5, {16.8, 20.4, 24.0, 27.6, 31.2}},
                                           {1.0, {20.3, 24.7, 29.0, 33.4, 37.7}},
                                           {1.5, {23.8, 28.9, 34.0, 39.1, 44.2}},
                                           {2.0, {27.3, 33.2, 39.0, 44.9, 50.7}},
                                           {2.5, {30.8, 37.4, 44.0, 50.6, 57.2}},
                                           {3.0, {34.3, 41.7, 49.0, 56.4, 63.7}}})}};
}

PUBLISHED(din18218_2010_factors, "DIN 18218 of 2010: K1 at 5, 10 and 20 h") {
  struct Factors {
    FlowClass flow;
    double at5, at10, at20;
  };
  const Factors table[] = {{FlowClass::f1, 1.00, 1.15, 1.45}, {FlowClass::f2, 1.00, 1.25, 1.80},
                           {FlowClass::f3, 1.00, 1.40, 2.15}, {FlowClass::f4, 1.00, 1.70, 3.10},
                           {FlowClass::f5, 1.00, 2.00, 4.00}, {FlowClass::f6, 1.00, 2.00, 4.00}};
  // From memory; the tabulated values are the linear ones, rounded (F3 at 10 h: 1.385 and 1.40).
  Sheet sheet{"DIN 18218:2010", "table 2", Mark::memory, Kind::worked_out, {}};
  for (const Factors& f : table) {
    const auto k1 = [&](double set) { return din18218_setting_factor(f.flow, hours(set)); };
    sheet.rows.push_back({fmt::format("{} 5 h", to_text(f.flow)), k1(5), f.at5, 1e-12});
    sheet.rows.push_back({fmt::format("{} 10 h", to_text(f.flow)), k1(10), f.at10, 0.016});
    sheet.rows.push_back({fmt::format("{} 20 h", to_text(f.flow)), k1(20), f.at20, 0.0051});
  }
  return {sheet};
}

PUBLISHED(din18218_2010, "DIN 18218 of 2010 gives the values worked out apart") {
  return {
      {"DIN 18218:2010",
       "formulas from memory; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"F3 tE 5, 1 m/h", kpa_2010(FlowClass::f3, 5, 1), 32.0, 1e-9},
        {"F3 tE 5, 2 m/h", kpa_2010(FlowClass::f3, 5, 2), 46.0, 1e-9},
        {"F3 tE 5, 3 m/h", kpa_2010(FlowClass::f3, 5, 3), 60.0, 1e-9},
        {"F3 tE 7, 1 m/h", kpa_2010(FlowClass::f3, 7, 1), 36.93, 0.005},
        {"F3 tE 7, 2 m/h", kpa_2010(FlowClass::f3, 7, 2), 53.08, 0.005},
        {"F3 tE 7, 3 m/h", kpa_2010(FlowClass::f3, 7, 3), 69.24, 0.005},
        {"F3 tE 10, 1 m/h", kpa_2010(FlowClass::f3, 10, 1), 44.32, 0.005},
        {"F3 tE 10, 2 m/h", kpa_2010(FlowClass::f3, 10, 2), 63.71, 0.005},
        {"F3 tE 10, 3 m/h", kpa_2010(FlowClass::f3, 10, 3), 83.10, 0.005},
        {"F2 tE 7, 1 m/h", kpa_2010(FlowClass::f2, 7, 1), 32.07, 0.005},
        {"F2 tE 7, 2 m/h", kpa_2010(FlowClass::f2, 7, 2), 43.13, 0.005},
        {"F2 tE 7, 3 m/h", kpa_2010(FlowClass::f2, 7, 3), 54.19, 0.005},
        {"F4 tE 10, 1 m/h", kpa_2010(FlowClass::f4, 10, 1), 57.8, 0.005},
        {"F4 tE 10, 2 m/h", kpa_2010(FlowClass::f4, 10, 2), 86.7, 0.005},
        {"F4 tE 10, 3 m/h", kpa_2010(FlowClass::f4, 10, 3), 115.6, 0.005}}},
      // (1.0 m + 0.26 v tE) x unit weight, at least 30 kPa: formula of an article in Concrete
      // International on DIN 18218:2010-01, second hand; values worked out apart.
      {"DIN 18218:2010, self-compacting",
       "formula second hand; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"tE 5, 1 m/h", kpa_2010(FlowClass::scc, 5, 1), 57.5, 1e-9},
        {"tE 5, 2 m/h", kpa_2010(FlowClass::scc, 5, 2), 90.0, 1e-9},
        {"tE 7, 2 m/h", kpa_2010(FlowClass::scc, 7, 2), 116.0, 1e-9},
        {"tE 10, 1 m/h", kpa_2010(FlowClass::scc, 10, 1), 90.0, 1e-9},
        {"tE 5, 0.1 m/h: least", kpa_2010(FlowClass::scc, 5, 0.1), 30.0, 1e-9}}},
  };
}
