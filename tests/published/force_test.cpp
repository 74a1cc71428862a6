#include "trade/motors/force.h"

#include <doctest/doctest.h>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

double force_n(double mass, double radius, double rpm) {
  return in(centrifugal_force(kilograms(mass), metres(radius), vibrations_per_minute(rpm)),
            in_newtons);
}

double in_g(Length amplitude_, double hz) {
  return in(acceleration(amplitude_, hertz(hz)), in_metres_per_second2) / kStandardGravity;
}

}  // namespace

PUBLISHED(eccentric, "an eccentric's force is its mass by its radius by the square of its speed") {
  return {
      // 10 g at 100 mm, as a balancing machine's manual prints it, which squares a rounded angular
      // speed (394.784 stands as 394.79).
      {"A balancing machine's manual",
       "table of unbalance forces, second hand",
       Mark::second_hand,
       Kind::worked_out,
       {{"3000 rpm, N", force_n(0.01, 0.1, 3000), 98.69, 0.0101},
        {"6000 rpm, N", force_n(0.01, 0.1, 6000), 394.79, 0.0101},
        {"3000 rpm as a weight, kg", force_n(0.01, 0.1, 3000) / kStandardGravity, 10.06, 0.005},
        // 40.24 is four times the rounded 10.06; 394.784 N weigh 40.257 kg.
        {"6000 rpm as a weight, kg", force_n(0.01, 0.1, 6000) / kStandardGravity, 40.24, 0.02}}},
      // F = U (rpm/9549)^2 with U in g mm, and the force grows with the square of the speed.
      {"Centrifugal force, F = m r w^2",
       "mechanics; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"1 g mm at 9549 rpm, N", force_n(0.001, 0.001, 9549), 1.0, 0.0001},
        {"twice the speed",
         in(force_at_speed(kilonewtons(1), hertz(50), hertz(100)), in_kilonewtons), 4.0, 1e-12},
        {"three times the speed",
         in(force_at_speed(kilonewtons(1), hertz(50), hertz(150)), in_kilonewtons), 9.0, 1e-12}}}};
}

PUBLISHED(sine_movement, "acceleration of a sine movement has the constants of the handbooks") {
  return {{"Sine movement, a = A (2 pi f)^2",
           "constants common to vibration handbooks; worked out apart",
           Mark::computed,
           Kind::worked_out,
           // A = 0.102 f^2 D: g, Hz, inches from zero to peak.
           {{"1 in at 1 Hz, g", in_g(inches(1.0), 1.0), 0.102, 0.0005},
            {"0.01 in at 50 Hz, g", in_g(inches(0.01), 50.0), 0.102 * 25.0, 0.01}}},
          {"Sine movement, peak to peak",
           "constants common to vibration handbooks; worked out apart",
           Mark::computed,
           Kind::worked_out,
           // G = D f^2 / 19.56, D from peak to peak: 4.89 in at 2 Hz is 1 g.
           {{"4.89 in of travel at 2 Hz, g", in_g(inches(4.89 / 2.0), 2.0), 1.0, 0.0005}}},
          // Least useful on the form. Told in the trade; no standard that says it was seen.
          {"Least movement of form vibrators",
           "common practice, no source",
           Mark::second_hand,
           Kind::transcribed,
           {{"acceleration, g", in_metres_per_second2(kNeededAcceleration) / kStandardGravity, 1.5,
             1e-12},
            {"amplitude, um", in_millimetres(kNeededAmplitude) * 1000.0, 40.0, 1e-9}}},
          {"Sine movement of a form",
           "formula; values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"40 um at 100 Hz, m/s2",
             in(acceleration(millimetres(0.04), hertz(100)), in_metres_per_second2), 15.79, 0.005},
            {"40 um at 100 Hz, g", in_g(millimetres(0.04), 100.0), 1.61, 0.005},
            {"40 um at 96.5 Hz, g", in_g(millimetres(0.04), 96.5), 1.5, 0.001}}}};
}

PUBLISHED(form_sizing, "form vibrators are sized as remembered of ACI 309R") {
  const auto lbf = [](FormKind kind) {
    return in(force_needed(pounds(4000), pounds(10000), kind), in_pounds_force);
  };
  return {{"ACI 309R",
           "0.5 and 1.5 x [form + 0.2 concrete]",
           Mark::memory,
           Kind::worked_out,
           {{"wall, lbf", lbf(FormKind::wall_or_beam), 3000.0, 1e-6},
            {"pipe, lbf", lbf(FormKind::pipe_or_stiff_mix), 9000.0, 1e-6}}}};
}
