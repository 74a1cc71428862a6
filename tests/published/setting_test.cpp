#include "trade/concrete/setting.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published.h"
#include "trade/concrete/penetration.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

TemperatureHistory steady(double t) {
  return {TemperatureHistory::Between::stepped, {{hours(0.0), celsius(t)}}};
}

double psi(Pressure p) {
  return in_psf(p) / 144.0;
}
Pressure from_psi(double p) {
  return psf(p * 144.0);
}

}  // namespace

PUBLISHED(nurse_saul_example, "a maturity example comes out as told") {
  // 28 d at 15 degC over a datum of -11 degC: 728 degC d.
  return {{"ASTM C1074",
           "Nurse-Saul function; the example second hand",
           Mark::second_hand,
           Kind::worked_out,
           {{"degC d", in(nurse_saul(steady(15.0), hours(28 * 24), celsius(-11.0)), in_degree_days),
             728.0, 1e-9}}}};
}

PUBLISHED(c403_thresholds, "initial and final set are those of ASTM C403") {
  return {{"ASTM C403",
           "terminology, MPa, not seen, second hand",
           Mark::second_hand,
           Kind::transcribed,
           {{"initial, kPa", in_kilopascals(kInitialSet), 3500.0, 1e-9},
            {"final, kPa", in_kilopascals(kFinalSet), 27600.0, 1e-9}}},
          {"Slag Cement Association, information sheet 3",
           "set by ASTM C403",
           Mark::read,
           Kind::transcribed,
           // The two unit systems of the standard are rounded apart.
           {{"initial, psi", psi(kInitialSet), 500.0, 8.0},
            {"final, psi", psi(kFinalSet), 4000.0, 4.0}}}};
}

PUBLISHED(c403_report,
          "a laboratory's readings set between the readings that enclose the threshold") {
  // A laboratory's C403 report: psi at minutes. Its own set times were not legible; the readings
  // either side of 500 and 4000 psi are.
  const std::vector<std::pair<double, double>> table{
      {330, 45.21},   {360, 126.09},  {390, 168.60},  {420, 313.65},
      {450, 517.54},  {480, 951.56},  {510, 1676.56}, {525, 2283.75},
      {540, 2673.44}, {555, 3081.25}, {570, 3625.00}, {585, 4531.25}};
  std::vector<PenetrationReading> readings;
  readings.reserve(table.size());
  for (const auto& [minutes, resistance] : table) {
    readings.push_back({seconds(minutes * 60.0), from_psi(resistance)});
  }
  const auto fit = fit_penetration(readings);
  const auto minutes_to = [&](Pressure threshold) {
    if (!fit) return std::numeric_limits<double>::quiet_NaN();
    return in(set_time(*fit, threshold), [](const SetTime& s) { return in_seconds(s.at) / 60.0; });
  };
  return {{"ASTM C403",
           "a laboratory's report, second hand",
           Mark::second_hand,
           Kind::worked_out,
           {{"500 psi, between 420 and 450 min", minutes_to(from_psi(500.0)), 435.0, 15.0},
            {"4000 psi, between 570 and 585 min", minutes_to(from_psi(4000.0)), 577.5, 7.5}}},
          {"ASTM C403",
           "correlation wanted, 0.98 at least",
           Mark::memory,
           Kind::worked_out,
           {{"of that report's fit", fit ? fit->correlation : 0.0, 0.99, 0.01}}}};
}

PUBLISHED(equivalent_age_factors, "equivalent age factors are those worked out apart") {
  // exp[-5000 (1/T - 1/Ts)] with kelvin = degC + 273 (here 273.15, hence the tolerance); form
  // second hand, Q from memory, values worked out apart.
  const auto factor = [](double t, double reference) {
    return rate_factor(celsius(t), {celsius(reference), {}});
  };
  return {{"ASTM C1074",
           "equivalent age, form second hand; values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"5 to 20", factor(5, 20), 0.3982, 0.0008},
            {"10 to 20", factor(10, 20), 0.5472, 0.0008},
            {"15 to 20", factor(15, 20), 0.7436, 0.0008},
            {"20 to 20", factor(20, 20), 1.0, 1e-12},
            {"25 to 20", factor(25, 20), 1.3315, 0.001},
            {"30 to 20", factor(30, 20), 1.7563, 0.002},
            {"35 to 20", factor(35, 20), 2.2958, 0.003},
            {"40 to 20", factor(40, 20), 2.9755, 0.005},
            {"10 to 23", factor(10, 23), 0.4603, 0.0008},
            {"20 to 23", factor(20, 23), 0.8412, 0.0008},
            {"30 to 23", factor(30, 23), 1.4773, 0.001},
            {"12 h at 20 and 12 h at 25, h",
             in(equivalent_age({TemperatureHistory::Between::stepped,
                                {{hours(0), celsius(20)}, {hours(12), celsius(25)}}},
                               hours(24)),
                in_hours),
             27.98, 0.01},
            {"the same, degC h over 0",
             in(nurse_saul({TemperatureHistory::Between::stepped,
                            {{hours(0), celsius(20)}, {hours(12), celsius(25)}}},
                           hours(24)),
                in_degree_hours),
             540.0, 1e-9}}}};
}

TEST_CASE("the early side of a set time is nowhere much later than a published table of them") {
  // The Pennsylvania State University, College of Engineering, concrete library: setting time by
  // the concrete's temperature (read). From any of its rows to any other.
  struct Row {
    double fahrenheit, hours;
  };
  const std::vector<Row> table{{100, 5.0 / 3}, {90, 8.0 / 3}, {80, 4},  {70, 6},
                               {60, 8},        {50, 11},      {40, 14}, {30, 19}};
  double latest = 0;
  for (const Row& known : table) {
    for (const Row& asked : table) {
      const auto by = [&](ActivationTemperature q) {
        return *time_to_reach(hours(known.hours), fahrenheit(asked.fahrenheit),
                              {fahrenheit(known.fahrenheit), q});
      };
      const double early = in_hours(std::min(by(kQuickSet), by(kSlowSet)));
      CAPTURE(known.fahrenheit);
      CAPTURE(asked.fahrenheit);
      CHECK(early <= 1.10 * asked.hours);
      latest = std::max(latest, early / asked.hours);
    }
  }
  CHECK(latest == doctest::Approx(1.093).epsilon(0.001));
}
