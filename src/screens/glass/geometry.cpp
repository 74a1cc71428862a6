#include "screens/glass/geometry.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

Box Box::meet(const Box& b) const {
  return {std::max(x0, b.x0), std::max(y0, b.y0), std::min(x1, b.x1), std::min(y1, b.y1)};
}

Box Box::cut_top(float height, float gap) {
  const Box cut{x0, y0, x1, y0 + height};
  y0 += height + gap;
  return cut;
}

Box Box::cut_bottom(float height, float gap) {
  const Box cut{x0, y1 - height, x1, y1};
  y1 -= height + gap;
  return cut;
}

Box Box::cut_left(float width, float gap) {
  const Box cut{x0, y0, x0 + width, y1};
  x0 += width + gap;
  return cut;
}

Box Box::cut_right(float width, float gap) {
  const Box cut{x1 - width, y0, x1, y1};
  x1 -= width + gap;
  return cut;
}

Box Box::column(int i, int n, float gap) const {
  const float each = (w() - gap * static_cast<float>(n - 1)) / static_cast<float>(n);
  const float left = x0 + (each + gap) * static_cast<float>(i);
  return {std::round(left), y0, std::round(left + each), y1};
}

Box Box::line(int i, int n, float gap) const {
  const float each = (h() - gap * static_cast<float>(n - 1)) / static_cast<float>(n);
  const float top = y0 + (each + gap) * static_cast<float>(i);
  return {x0, std::round(top), x1, std::round(top + each)};
}

float gap_between(const Box& a, const Box& b) {
  const float dx = std::max({a.x0 - b.x1, b.x0 - a.x1, 0.0F});
  const float dy = std::max({a.y0 - b.y1, b.y0 - a.y1, 0.0F});
  return std::max(dx, dy);
}

}  // namespace rb::screens
