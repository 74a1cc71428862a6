#include "trade/pressure/rise.h"

#include <algorithm>
#include <vector>

namespace rb::trade {

WorstWindow worst_window(const TopCurve& top, Seconds window, Seconds from, Seconds to) {
  const Seconds first = from - window;
  std::vector<Seconds> begins{first, to};
  const auto& points = top.points();
  auto point = std::upper_bound(points.begin(), points.end(), first,
                                [](Seconds m, const SurfacePoint& p) { return m < p.at; });
  for (; point != points.end() && point->at - window < to; ++point) {
    for (const Seconds begin : {point->at - window, point->at}) {
      if (begin > first && begin < to) begins.push_back(begin);
    }
  }
  std::sort(begins.begin(), begins.end());
  WorstWindow worst{first, Velocity{}};
  for (const Seconds begin : begins) {
    const Velocity rise = rate(top.at(begin + window) - top.before(begin), window);
    if (rise > worst.rise) worst = {begin, rise};
  }
  return worst;
}

Velocity worst_rise(const TopCurve& top, Seconds window, Seconds from, Seconds to) {
  return worst_window(top, window, from, to).rise;
}

}  // namespace rb::trade
