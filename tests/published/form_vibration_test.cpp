#include "trade/pressure/pressure_profile.h"
#include "trade/shape/trend.h"

#include <doctest/doctest.h>

#include <array>
#include <vector>

#include "published.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

PUBLISHED(shaken_wall, "a wall shaken all the way down presses as a liquid") {
  // 5 m of 24 kN/m3 with form vibrators over the full height: 120 kPa at the bottom, falling
  // straight to nothing at the top, where without them 50 kPa had been reckoned with.
  const auto shaken =
      pressure_profile(kilonewtons_per_m3(24), metres(5), kilopascals(50), metres(0));
  return {{"Full liquid head, p = w h",
           "ACI 347, external vibration, not seen, second hand; values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"5 m at the bottom, kPa", in_kilopascals(shaken.at(metres(0))), 120.0, 0.01},
            {"5 m at the top, kPa", in_kilopascals(shaken.at(metres(5))), 0.0, 0.01},
            {"the greatest, kPa", in_kilopascals(shaken.greatest().pressure), 120.0, 0.01}}}};
}

PUBLISHED(median_slope, "the median slope of readings is the median of the slopes of all pairs") {
  // Fifteen pairs, three of x = 28 and two of x = 40 among them: estimate 0.5.
  constexpr std::array kY{21., 4., 9., 12., 35., 18., 10., 22., 24., 1., 6., 8., 13., 16., 19.};
  constexpr std::array kX{67., 28., 30., 28., 52., 40., 25., 37.,
                          44., 10., 14., 20., 28., 40., 51.};
  std::vector<TrendPoint> points;
  for (std::size_t i = 0; i < kX.size(); ++i) points.push_back({seconds(kX[i]), metres(kY[i])});
  const auto found = trend(points, Length{});
  return {{"Theil and Sen's slope",
           "H. Theil 1950, P. K. Sen 1968, from memory; value worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"slope", found ? found->likely.value() : -1.0, 0.5, 1e-9}}}};
}
