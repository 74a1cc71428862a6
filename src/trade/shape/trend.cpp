#include "trade/shape/trend.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rb::trade {

namespace {

template <class T>
T median(std::vector<T> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2.0;
}

// Standard normal, two-sided 80 %.
constexpr double kDeviations = 1.2816;

// Sen's ranks: the slopes are in order; (N -+ C)/2 of them lie outside.
std::pair<Velocity, Velocity> sen_interval(const std::vector<Velocity>& slopes,
                                           std::size_t readings) {
  const auto n = static_cast<double>(readings);
  const auto count = static_cast<double>(slopes.size());
  const double c = kDeviations * std::sqrt(n * (n - 1) * (2 * n + 5) / 18.0);
  const double last = count - 1;
  const double low = std::clamp(std::floor((count - c) / 2) - 1, 0.0, last);
  const double high = std::clamp(std::ceil((count + c) / 2), 0.0, last);
  return {slopes[static_cast<std::size_t>(low)], slopes[static_cast<std::size_t>(high)]};
}

}  // namespace

Length Trend::at(Seconds moment) const {
  return height + quantity_of<Length>(likely.value() * (moment - middle).count());
}

std::optional<Trend> trend(std::span<const TrendPoint> points, Length error) {
  std::vector<Velocity> slopes;
  for (std::size_t a = 0; a < points.size(); ++a) {
    for (std::size_t b = a + 1; b < points.size(); ++b) {
      if (points[a].at == points[b].at) continue;
      slopes.push_back(rate(points[b].height - points[a].height, points[b].at - points[a].at));
    }
  }
  if (slopes.empty()) return std::nullopt;
  std::sort(slopes.begin(), slopes.end());

  Trend found;
  found.readings = static_cast<int>(points.size());
  found.likely = median(slopes);
  const auto [first, last] =
      std::minmax_element(points.begin(), points.end(),
                          [](const TrendPoint& a, const TrendPoint& b) { return a.at < b.at; });
  const Velocity unsure = rate(error * 2.0, last->at - first->at);
  const auto [low, high] = sen_interval(slopes, points.size());
  found.low = std::min(low, found.likely - unsure);
  found.high = std::max(high, found.likely + unsure);

  std::vector<Seconds> moments;
  for (const TrendPoint& point : points) moments.push_back(point.at);
  found.middle = median(moments);
  std::vector<Length> heights;
  for (const TrendPoint& point : points) {
    heights.push_back(point.height - quantity_of<Length>(found.likely.value() *
                                                         (point.at - found.middle).count()));
  }
  found.height = median(heights);
  return found;
}

}  // namespace rb::trade
