#include "trade/shape/outline.h"

#include <cmath>

namespace rb::trade {

Area area_of(std::span<const FacePoint> outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const FacePoint& a = outline[i];
    const FacePoint& b = outline[(i + 1) % outline.size()];
    twice += in_metres(a.x) * in_metres(b.z) - in_metres(b.x) * in_metres(a.z);
  }
  return square_metres(std::abs(twice) / 2);
}

}  // namespace rb::trade
