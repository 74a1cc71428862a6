#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published.h"
#include "trade/motors/power.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

double ohm_km(ConductorClass conductor, double mm2) {
  return in(conductor_resistance(conductor, square_millimetres(mm2)), in_ohms_per_kilometre);
}

double drop(double amps, double length, double r, double x, std::optional<PowerFactor> factor) {
  return in_volts(three_phase_drop(amperes(amps), metres(length), ohms_per_kilometre(r),
                                   ohms_per_kilometre(x), factor));
}

}  // namespace

PUBLISHED(iec60228, "conductor resistances are those printed of IEC 60228") {
  struct Size {
    double mm2, class2, class5;
  };
  // Plain copper, greatest resistance at 20 degC.
  const Size table[] = {
      {0.5, 36.0, 39.0},     {0.75, 24.5, 26.0},    {1, 18.1, 19.5},       {1.5, 12.1, 13.3},
      {2.5, 7.41, 7.98},     {4, 4.61, 4.95},       {6, 3.08, 3.30},       {10, 1.83, 1.91},
      {16, 1.15, 1.21},      {25, 0.727, 0.78},     {35, 0.524, 0.554},    {50, 0.387, 0.386},
      {70, 0.268, 0.272},    {95, 0.193, 0.206},    {120, 0.153, 0.161},   {150, 0.124, 0.129},
      {185, 0.0991, 0.106},  {240, 0.0754, 0.0801}, {300, 0.0601, 0.0641}, {400, 0.0470, 0.0486},
      {500, 0.0366, 0.0384}, {630, 0.0283, 0.0287}};
  Sheet sheet{"IEC 60228",
              "tables 2 and 3, not seen, second hand",
              Mark::second_hand,
              Kind::transcribed,
              {}};
  for (const Size& size : table) {
    sheet.rows.push_back({fmt::format("class 2, {} mm2", size.mm2),
                          ohm_km(ConductorClass::class2, size.mm2), size.class2, 1e-9});
    sheet.rows.push_back({fmt::format("class 5, {} mm2", size.mm2),
                          ohm_km(ConductorClass::class5, size.mm2), size.class5, 1e-9});
  }
  return {sheet};
}

PUBLISHED(iec60228_warmth, "copper's resistance grows with warmth as printed of IEC 60228") {
  // Kt = R20/R.
  const std::pair<double, double> table[] = {
      {5, 1.064},  {10, 1.042}, {15, 1.020}, {20, 1.000}, {25, 0.980}, {30, 0.962}, {35, 0.943},
      {40, 0.926}, {45, 0.909}, {50, 0.893}, {55, 0.877}, {60, 0.862}, {65, 0.847}, {70, 0.833},
      {75, 0.820}, {80, 0.806}, {85, 0.794}, {90, 0.781}, {95, 0.769}, {100, 0.758}};
  Sheet sheet{"IEC 60228",
              "annex, correction for temperature, not seen, second hand",
              Mark::second_hand,
              Kind::worked_out,
              {}};
  for (const auto& [t, kt] : table) {
    sheet.rows.push_back({fmt::format("Kt at {} degC", t),
                          1.0 / copper_temperature_factor(celsius(t)), kt, 0.00051});
  }
  return {sheet};
}

PUBLISHED(kva_amperes, "kVA and amperes at 400 V are those of the definition") {
  const std::pair<double, double> table[] = {{1, 1.44},   {5, 7.22},   {10, 14.43},
                                             {25, 36.08}, {50, 72.17}, {100, 144.34}};
  Sheet sheet{"Three-phase apparent power",
              "S = sqrt(3) U I; values worked out apart",
              Mark::computed,
              Kind::worked_out,
              {}};
  for (const auto& [kva, amps] : table) {
    sheet.rows.push_back({fmt::format("{} kVA", kva),
                          in_amperes(line_current(kilovoltamperes(kva), volts(400.0))), amps,
                          0.0051});
  }
  return {sheet};
}

PUBLISHED(voltage_drops, "voltage drops are those worked out apart") {
  return {
      // dU = sqrt(3) I L (R cos + X sin).
      {"Three-phase voltage drop",
       "formula common to handbooks of installation; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"10 A, 100 m, 2.5 mm2 class 5, cos 0.8", drop(10, 100, 7.98, 0.08, PowerFactor{0.8}),
         11.14, 0.005},
        {"75 A, 350 m, 0.2 ohm/km", drop(75, 350, 0.2, 0.0, std::nullopt), 9.09, 0.005},
        {"100 A, 50 m, 35 mm2, cos 0.8", drop(100, 50, 22.5 / 35, 0.08, PowerFactor{0.8}), 4.87,
         0.005},
        {"500 A, 50 m, 35 mm2, cos 0.35", drop(500, 50, 22.5 / 35, 0.08, PowerFactor{0.35}), 12.99,
         0.005}}},
      // An installation handbook's motor on 50 m of 35 mm2, printed rounded: 5 V running, 13 V
      // starting.
      {"Installation handbook, motor on 50 m of cable",
       "example",
       Mark::memory,
       Kind::worked_out,
       {{"running, V", drop(100, 50, 22.5 / 35, 0.08, PowerFactor{0.8}), 5.0, 0.2},
        {"starting, V", drop(500, 50, 22.5 / 35, 0.08, PowerFactor{0.35}), 13.0, 0.2}}},
  };
}
