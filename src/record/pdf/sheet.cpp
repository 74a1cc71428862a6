#include "record/pdf/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "record/pdf/lines.h"

namespace rb {

namespace {

constexpr double kSide = 40;
constexpr double kTopMargin = 58;     // clear of a clipboard's clip
constexpr double kBottomMargin = 60;  // the foot stands in it

}  // namespace

Sheet::Sheet(cairo_t* cr, Paper paper, PageWords words, int pages)
    : ink_(cr), paper_(paper), words_(std::move(words)), pages_(pages) {
  begin_page();
}

Sheet::~Sheet() {
  cairo_show_page(ink_.cr());
}

double Sheet::left() const {
  return kSide;
}
double Sheet::width() const {
  return paper_.width - 2 * kSide;
}
double Sheet::room() const {
  return paper_.height - kBottomMargin - y_;
}
double Sheet::body() const {
  return paper_.height - kBottomMargin - kTopMargin;
}

void Sheet::keep(double points) {
  if (room() < points && y_ > kTopMargin) turn();
}

void Sheet::turn() {
  cairo_show_page(ink_.cr());
  begin_page();
}

void Sheet::begin_page() {
  ++page_;
  y_ = kTopMargin;
  const double right = kSide + width();
  const Style small{words_.size, false, look::steel};
  if (page_ > 1) {
    const double head = kTopMargin - 15 - words_.size;
    const Style right_style{words_.size, false, look::steel, Align::right};
    const double taken = Ink::width(ink_.lay(words_.head_right, right_style));
    ink_.text(right, head, words_.head_right, right_style);
    ink_.fitted(kSide, head, width() - std::max(110.0, taken + 10), words_.head_left, small);
    ink_.line(kSide, kTopMargin - 9, right, kTopMargin - 9, look::hair);
  }
  const double foot = paper_.height - kBottomMargin + 16;
  ink_.line(kSide, foot, right, foot, look::slate, 0.8);
  ink_.fitted(kSide, foot + 5, width() - 80, words_.foot_left, small);
  ink_.text(right, foot + 5, fmt::format(fmt::runtime(words_.page_of), page_, pages_),
            {words_.size, true, look::slate, Align::right});
  ink_.fitted(kSide, foot + 9 + words_.size, width(), words_.foot_long,
              {words_.size - 1, false, look::steel});
}

void Sheet::section(const std::string& title, double with) {
  const double tall = words_.heading + 9;
  if (y_ > kTopMargin) skip(14);
  keep(tall + with);
  ink_.box(left(), y_ + 2.5, 3, words_.heading - 0.5, look::clay);
  ink_.fitted(left() + 9, y_, width() - 9, title, {words_.heading, true, look::slate});
  y_ += tall;
}

void Sheet::text(const std::string& text, const Style& style, double indent) {
  const Lines lines(ink_, text, style, width() - indent);
  std::size_t from = 0;
  while (from < lines.count()) {
    const double fits = std::floor(room() / lead(style.size));
    const std::size_t rest = lines.count() - from;
    std::size_t now = fits < 1 ? 0 : std::min(rest, static_cast<std::size_t>(fits));
    if (rest - now == 1 && now > 2) --now;
    if (now < std::min<std::size_t>(rest, 2)) {  // a lone line does not stay behind
      turn();
      continue;
    }
    lines.draw(ink_, left() + indent, y_, from, from + now);
    y_ += static_cast<double>(now) * lead(style.size);
    from += now;
    if (from < lines.count()) turn();
  }
}

}  // namespace rb
