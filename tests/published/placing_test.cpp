#include "trade/concrete/placing.h"

#include <doctest/doctest.h>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

namespace {

double output_cfh(double cubic_feet, double minutes, int mixers = 1) {
  return in(output_rate(cubic_yards(cubic_feet / 27.0), seconds(minutes * 60.0), mixers),
            in_cubic_feet_per_hour);
}

double area_sf(double length_ft, double width_ft) {
  return in(plan_area(feet(length_ft), feet(width_ft)), in_square_feet);
}

}  // namespace

PUBLISHED(army_mixer, "mixer output and plan area are those of the army's course") {
  return {{"US Army Engineer School, subcourse EN5151",
           "part C, design procedures",
           Mark::read,
           Kind::worked_out,
           {{"16 cu ft in 7 min, cu ft/h", output_cfh(16, 7), 137.14, 0.005},
            {"16 cu ft in 6 min, two mixers (answer C)", output_cfh(16, 6, 2), 320.0, 1e-9}}},
          {"US Army Engineer School, subcourse EN5151",
           "answer key",
           Mark::read,
           Kind::worked_out,
           {{"27 cu ft in 4 min, cu ft/h", output_cfh(27, 4), 405.0, 1e-9},
            {"92 ft x 12 in, sq ft", area_sf(92, 1), 92.0, 1e-9}}},
          {"US Army Engineer School, subcourse EN5466A",
           "p. 3-13",
           Mark::read,
           Kind::worked_out,
           {{"40 ft x 2 ft, sq ft", area_sf(40, 2), 80.0, 1e-9}}}};
}

PUBLISHED(rises, "a rise times its plan area is the rate of placing") {
  return {
      {"Rate of placing = rise x plan area",
       "geometry; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"40 ft x 12 in x 10 ft, yd3", area_sf(40, 1) * 10.0 / 27.0, 14.815, 0.001},
        {"10 ft at 5 ft/h, h", in(placing_time(feet(10), feet_per_hour(5)), in_hours), 2.0, 1e-9},
        {"54 ft x 12 ft, yd3/h at 4 ft/h",
         in(placing_for(feet_per_hour(4), square_feet(54 * 12)), in_cubic_feet_per_hour) / 27.0,
         96.0, 1e-9}}}};
}

PUBLISHED(army_rise, "the army's wall rises as worked out apart") {
  // 1 yd3 each 10 min into 80 sq ft, 10 ft high.
  const auto rise = rise_of(cubic_feet_per_hour(162), square_feet(80));
  return {{"US Army Engineer School, subcourse EN5466A",
           "procedure read; values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"output, cu ft/h", output_cfh(27, 10), 162.0, 1e-9},
            {"rise, ft/h", in(rise, in_feet_per_hour), 2.025, 1e-9},
            {"time, h", rise ? in(placing_time(feet(10), *rise), in_hours) : 0.0, 4.94, 0.005}}}};
}
