#include "trade/shape/surface.h"

#include <algorithm>

namespace rb::trade {

namespace {

bool earlier(const SurfacePoint& point, Seconds moment) {
  return point.at < moment;
}
bool later(Seconds moment, const SurfacePoint& point) {
  return moment < point.at;
}

Length between_points(const SurfacePoint& a, const SurfacePoint& b, Seconds moment) {
  const double share = (moment - a.at) / (b.at - a.at);
  return a.height + (b.height - a.height) * share;
}

Seconds crossing(const SurfacePoint& a, const SurfacePoint& b, Length z) {
  const double share = (z - a.height) / (b.height - a.height);
  return a.at + (b.at - a.at) * share;
}

}  // namespace

void TopCurve::read(Seconds at, Length height) {
  if (points_.empty() && height > Length{}) points_.push_back({at, Length{}});
  points_.push_back({at, points_.empty() ? height : std::max(height, standing())});
}

void TopCurve::stand(Seconds at) {
  points_.push_back({at, standing()});
}

Length TopCurve::standing() const {
  return points_.empty() ? Length{} : points_.back().height;
}

Length TopCurve::at(Seconds moment) const {
  const auto next = std::upper_bound(points_.begin(), points_.end(), moment, later);
  if (next == points_.begin()) return Length{};
  if (next == points_.end()) return standing();
  return between_points(*(next - 1), *next, moment);
}

Length TopCurve::before(Seconds moment) const {
  const auto next = std::lower_bound(points_.begin(), points_.end(), moment, earlier);
  if (next == points_.begin()) return Length{};
  if (next == points_.end()) return standing();
  return between_points(*(next - 1), *next, moment);
}

TopCurve TopCurve::between(Length low, Length high) const {
  const auto above = std::upper_bound(points_.begin(), points_.end(), low,
                                      [](Length h, const SurfacePoint& p) { return h < p.height; });
  const auto first = above == points_.begin() ? above : above - 1;
  const auto reaches = std::lower_bound(
      first, points_.end(), high, [](const SurfacePoint& p, Length h) { return p.height < h; });
  TopCurve part;
  part.points_.assign(first, reaches == points_.end() ? reaches : reaches + 1);
  return part;
}

TopCurve TopCurve::until(Seconds moment) const {
  const auto next = std::upper_bound(points_.begin(), points_.end(), moment, later);
  TopCurve part;
  part.points_.assign(points_.begin(), next);
  if (next != points_.begin() && next != points_.end()) {
    part.points_.push_back({moment, between_points(*(next - 1), *next, moment)});
  }
  return part;
}

std::optional<Seconds> TopCurve::reached(Length z) const {
  const auto next = std::lower_bound(points_.begin(), points_.end(), z,
                                     [](const SurfacePoint& p, Length h) { return p.height < h; });
  if (next == points_.end()) return std::nullopt;
  if (next == points_.begin()) return next->at;
  return crossing(*(next - 1), *next, z);
}

std::optional<Seconds> TopCurve::covered(Length z) const {
  const auto next = std::upper_bound(points_.begin(), points_.end(), z,
                                     [](Length h, const SurfacePoint& p) { return h < p.height; });
  if (next == points_.end()) return std::nullopt;
  if (next == points_.begin()) return next->at;
  return crossing(*(next - 1), *next, z);
}

}  // namespace rb::trade
