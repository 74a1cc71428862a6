#include "record/pdf/lines.h"

#include <algorithm>

namespace rb {

namespace {

constexpr double baseline(double size) {
  return size * 1.03;
}

}  // namespace

Lines::Lines(const Ink& ink, const std::string& text, const Style& style, double width)
    : layout_(ink.lay(text, style, width)), count_(0), style_(style), width_(width) {
  if (!text.empty()) {
    count_ = static_cast<std::size_t>(pango_layout_get_line_count(layout_.get()));
  }
}

void Lines::draw(const Ink& ink, double x, double y, std::size_t from, std::size_t to) const {
  ink.colour(style_.colour);
  for (std::size_t i = from; i < std::min(to, count_); ++i) {
    PangoLayoutLine* line = pango_layout_get_line_readonly(layout_.get(), static_cast<int>(i));
    PangoRectangle logical{};
    pango_layout_line_get_extents(line, nullptr, &logical);
    const double spare = width_ - static_cast<double>(logical.width) / PANGO_SCALE;
    double dx = 0;
    if (style_.align == Align::right) dx = spare;
    if (style_.align == Align::centre) dx = spare / 2;
    cairo_move_to(ink.cr(), x + dx,
                  y + baseline(style_.size) + static_cast<double>(i - from) * lead(style_.size));
    pango_cairo_show_layout_line(ink.cr(), line);
  }
}

}  // namespace rb
