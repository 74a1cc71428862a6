// Points and boxes of the screen, in pixels, and ways of cutting a box into parts.
#pragma once

namespace rb::screens {

struct Point {
  float x = 0, y = 0;
  bool operator==(const Point&) const = default;
};

struct Box {
  float x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  bool operator==(const Box&) const = default;

  [[nodiscard]] float w() const { return x1 - x0; }
  [[nodiscard]] float h() const { return y1 - y0; }
  [[nodiscard]] Point middle() const { return {(x0 + x1) / 2, (y0 + y1) / 2}; }
  [[nodiscard]] bool empty() const { return x1 <= x0 || y1 <= y0; }
  [[nodiscard]] bool holds(Point p) const { return p.x >= x0 && p.x < x1 && p.y >= y0 && p.y < y1; }
  [[nodiscard]] bool holds(const Box& b) const {
    return b.x0 >= x0 && b.y0 >= y0 && b.x1 <= x1 && b.y1 <= y1;
  }
  [[nodiscard]] bool overlaps(const Box& b) const {
    return b.x0 < x1 && b.x1 > x0 && b.y0 < y1 && b.y1 > y0;
  }
  [[nodiscard]] Box inset(float by) const { return {x0 + by, y0 + by, x1 - by, y1 - by}; }
  [[nodiscard]] Box inset(float dx, float dy) const { return {x0 + dx, y0 + dy, x1 - dx, y1 - dy}; }
  [[nodiscard]] Box meet(const Box& b) const;

  /// Cut a strip off one side and keep the rest; `gap` beside the strip is thrown away.
  Box cut_top(float height, float gap = 0);
  Box cut_bottom(float height, float gap = 0);
  Box cut_left(float width, float gap = 0);
  Box cut_right(float width, float gap = 0);

  /// The i-th of n equal parts side by side (or one under the other), with gaps between.
  [[nodiscard]] Box column(int i, int n, float gap) const;
  [[nodiscard]] Box line(int i, int n, float gap) const;
};

/// The free distance between two boxes: 0 when they touch or overlap.
float gap_between(const Box& a, const Box& b);

}  // namespace rb::screens
