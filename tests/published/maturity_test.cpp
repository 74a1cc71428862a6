#include "trade/concrete/evaporation.h"
#include "trade/concrete/setting.h"

#include <doctest/doctest.h>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

double nurse_saul_days(double degrees, double days, double datum) {
  const TemperatureHistory history{TemperatureHistory::Between::stepped,
                                   {{seconds(0), celsius(degrees)}}};
  return in(nurse_saul(history, seconds(days * 86400), celsius(datum)), in_degree_days);
}

double dries(double concrete, double air, double humidity, double wind_kmh) {
  return in(evaporation(celsius(concrete),
                        {celsius(air), Humidity{humidity}, metres_per_hour(wind_kmh * 1000)}),
            [](Evaporation e) { return e.kg_m2_h; });
}

}  // namespace

PUBLISHED(nurse_saul_28_days, "28 days at 15 degC over -11 degC are 728 degC days") {
  return {{"ASTM C1074, temperature-time factor by Nurse and Saul",
           "worked example of a text on maturity, second hand and from memory",
           Mark::second_hand,
           Kind::worked_out,
           {{"28 d at 15 degC over -11 degC, degC d", nurse_saul_days(15, 28, -11), 728, 1e-9}}}};
}

PUBLISHED(menzel_evaporation, "Menzel's formula gives what its own arithmetic gives") {
  // 5 ([Tc + 18]^2.5 - r [Ta + 18]^2.5) (V + 4) 1e-6, worked out apart from the product.
  return {{"ACI 305R, evaporation by Menzel as Uno wrote it (1998)",
           "the formula from memory; the figures worked out from it by hand",
           Mark::computed,
           Kind::worked_out,
           // 7^5 = 16807 and 6^5 = 7776: 31 + 18 = 49 = 7^2, 18 + 18 = 36 = 6^2.
           {{"31 and 18 degC, 50 %, 16 km/h, kg/m2/h", dries(31, 18, 0.5, 16), 1.2919, 1e-9},
            {"the same in still air", dries(31, 18, 0.5, 0), 0.25838, 1e-9},
            {"18 and 18 degC at 100 %", dries(18, 18, 1, 10), 0, 1e-12}}}};
}
