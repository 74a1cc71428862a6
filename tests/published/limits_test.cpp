#include <doctest/doctest.h>

#include "published.h"
#include "trade/concrete/delivery.h"
#include "trade/concrete/surface_void.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {
double coldest(double section_in) {
  return in(coldest_placing(inches(section_in)), [](Celsius t) { return t.fahrenheit(); });
}
}  // namespace

PUBLISHED(placing_limits, "placing limits are those told of ASTM C94, ACI 301 and ACI 306") {
  return {
      {"ASTM C94",
       "time of discharge (editions before 2021), as Concrete Construction tells it; second hand",
       Mark::second_hand,
       Kind::transcribed,
       {{"hours to discharge", in_hours(kLoadAgeDefault), 1.5, 1e-12}}},
      {"ACI 301-20 and 305.1-14",
       "greatest temperature at discharge, not seen, second hand",
       Mark::second_hand,
       Kind::transcribed,
       {{"hottest, degF", kHottestPlacing.fahrenheit(), 95.0, 1e-9}}},
      {"ACI 306R",
       "table of least temperature as placed, not seen, second hand",
       Mark::second_hand,
       Kind::transcribed,
       {{"8 in, degF", coldest(8), 55.0, 1e-9},
        {"12 in, degF", coldest(12), 50.0, 1e-9},
        {"24 in, degF", coldest(24), 50.0, 1e-9},
        {"36 in, degF", coldest(36), 45.0, 1e-9},
        {"48 in, degF", coldest(48), 45.0, 1e-9},
        {"80 in, degF", coldest(80), 40.0, 1e-9}}},
  };
}

PUBLISHED(void_limits, "surface void classes are those remembered of ACI 347.3R") {
  return {
      {"ACI 347.3R",
       "abstract of the report, American Concrete Institute",
       Mark::read,
       Kind::transcribed,
       {{"side, mm", in_millimetres(kVoidTestSide), 610.0, 0.5}}},
      {"ACI 347.3R",
       "classes of surface void ratio",
       Mark::memory,
       Kind::transcribed,
       {{"SVR1, %", greatest_void_share(VoidClass::svr1) * 100.0, 1.2, 1e-9},
        {"SVR2, %", greatest_void_share(VoidClass::svr2) * 100.0, 0.9, 1e-9},
        {"SVR3, %", greatest_void_share(VoidClass::svr3) * 100.0, 0.6, 1e-9},
        {"SVR4, %", greatest_void_share(VoidClass::svr4) * 100.0, 0.3, 1e-9}}},
      // A German sheet: 3000, 2250, 1500, 750 mm2 of pores on 500 x 500 mm.
      {"German sheet on fair-faced concrete",
       "classes P1 to P4",
       Mark::memory,
       Kind::worked_out,
       {{"P1, %",
         in(void_share(square_metres(3000e-6), square_metres(0.25)),
            [](double s) { return s * 100.0; }),
         1.2, 1e-9},
        {"P4, %",
         in(void_share(square_metres(750e-6), square_metres(0.25)),
            [](double s) { return s * 100.0; }),
         0.3, 1e-9}}},
  };
}
