// Text laid out in lines that can be drawn some here and the rest on the next page.
#pragma once

#include <cstddef>
#include <string>

#include "record/pdf/ink.h"

namespace rb {

/// From one line's top to the next's, for a size of type.
constexpr double lead(double size) {
  return size * 1.38;
}

class Lines {
 public:
  /// Wrapped in `width` points; one line when width is below 0. No text, no lines.
  Lines(const Ink& ink, const std::string& text, const Style& style, double width);

  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] double height() const { return static_cast<double>(count_) * lead(style_.size); }
  /// Draws lines [from, to), the first one's top at y.
  void draw(const Ink& ink, double x, double y, std::size_t from, std::size_t to) const;

 private:
  LayoutHandle layout_;
  std::size_t count_;
  Style style_;
  double width_;
};

}  // namespace rb
