#include "record/pdf/time_drawing.h"

#include <algorithm>
#include <array>

namespace rb {

namespace {

constexpr double kNames = 84;  // left of the lanes
constexpr double kLaneTall = 13;
constexpr double kRiseTall = 120;
constexpr double kClockTall = 14;
constexpr Style kLaneName{7, false, look::steel};

// A line through points that may be broken.
void put_line(const Ink& ink, const std::vector<std::array<double, 2>>& points, bool broken) {
  static constexpr std::array<double, 2> kDash{3, 2};
  cairo_t* cr = ink.cr();
  if (broken) cairo_set_dash(cr, kDash.data(), 2, 0);
  for (const auto& point : points) cairo_line_to(cr, point[0], point[1]);
  ink.colour(broken ? look::clay : look::slate);
  cairo_set_line_width(cr, broken ? 0.9 : 1.4);
  cairo_stroke(cr);
  cairo_set_dash(cr, nullptr, 0, 0);
}

// Labelled where there is room behind the label before; returns where its own ends.
double put_bar(const Ink& ink, const TimeBar& bar, double x, double wide, double y, double taken) {
  if (bar.to) {
    ink.box(x, y + 2.5, wide, kLaneTall - 5, {0.735, 0.785, 0.822});
    ink.frame(x, y + 2.5, wide, kLaneTall - 5, look::slate, 0.6);
  } else {
    cairo_t* cr = ink.cr();
    cairo_move_to(cr, x, y + 2.5);
    cairo_line_to(cr, x + 2.6, y + kLaneTall / 2);
    cairo_line_to(cr, x, y + kLaneTall - 2.5);
    cairo_line_to(cr, x - 2.6, y + kLaneTall / 2);
    cairo_close_path(cr);
    ink.colour(look::clay);
    cairo_fill(cr);
  }
  const double at = x + (bar.to ? 2 : 4);
  if (bar.label.empty() || at < taken) return taken;
  const Style style{6.4, false, look::slate};
  const double needs = Ink::width(ink.lay(bar.label, style));
  if (bar.to && needs + 3 >= wide) return taken;
  ink.text(at, y + 2, bar.label, style);
  return at + needs + 1;
}

}  // namespace

TimeDrawing::TimeDrawing(const PourRecord& pour, const Shown& shown)
    : shown_(shown), lanes_(timeline_of(pour, shown)), curves_(rise_curves(pour)) {}

double TimeDrawing::rise_height() const {
  return curves_.empty() ? 0 : kRiseTall + 10;
}

double TimeDrawing::height() const {
  return rise_height() + kLaneTall * static_cast<double>(lanes_.size()) + kClockTall;
}

void TimeDrawing::draw(const Ink& ink, double x, double y, double width) const {
  const TimeAxis axis{lanes_};
  const double left = x + kNames;
  const double wide = width - kNames;
  const double bottom = y + height() - kClockTall;
  for (const Moment tick : axis.ticks(shown_.voice().utc_offset)) {
    const double at = left + wide * axis.share(tick);
    ink.line(at, y, at, bottom, look::hair, 0.5);
    const std::string clock = clock_text(tick, shown_.voice().utc_offset);
    const double middle = std::clamp(at, left, left + wide - 12);
    ink.text(middle, bottom + 2, clock.substr(0, 5), {7, false, look::steel, Align::centre});
  }
  if (!curves_.empty()) rise(ink, axis, left, y, wide);
  lanes(ink, axis, x, y + rise_height(), width);
}

// Heights to scale, the limit as a slope from each lift's start.
void TimeDrawing::rise(const Ink& ink, const TimeAxis& axis, double x, double y,
                       double width) const {
  Length most = metres(0.1);
  for (const RiseCurve& curve : curves_) {
    most = std::max(most, curve.read.back().height);
    for (const auto& [from, to] : curve.limits) most = std::max(most, to.height);
  }
  const auto place = [&](const RiseCurve::Point& point) {
    return std::array<double, 2>{x + width * axis.share(point.at),
                                 y + kRiseTall * (1 - in_metres(point.height) / in_metres(most))};
  };
  cairo_save(ink.cr());
  cairo_rectangle(ink.cr(), x - 2, y - 1, width + 4, kRiseTall + 2);
  cairo_clip(ink.cr());
  for (const RiseCurve& curve : curves_) {
    for (const auto& [from, to] : curve.limits) put_line(ink, {place(from), place(to)}, true);
    std::vector<std::array<double, 2>> points;
    for (const RiseCurve::Point& point : curve.read) points.push_back(place(point));
    put_line(ink, points, false);
  }
  cairo_restore(ink.cr());
  ink.line(x, y, x, y + kRiseTall, look::slate, 0.8);
  ink.line(x, y + kRiseTall, x + width, y + kRiseTall, look::slate, 0.8);
  const Style right{7, false, look::steel, Align::right};
  ink.text(x - 4, y - 2, shown_.figure(amount(most)), right);
  ink.text(x - 4, y + kRiseTall - 8, shown_.figure(amount(metres(0))), right);
  double free = -1e9;
  for (const RiseCurve& curve : curves_) {
    const double at = std::max(place(curve.read.back())[1], free + 9);
    free = at;
    ink.fitted(x + 4, at + 1, width / 3, curve.element, {7, true, look::slate});
  }
}

void TimeDrawing::lanes(const Ink& ink, const TimeAxis& axis, double x, double y,
                        double width) const {
  const double left = x + kNames;
  const double wide = width - kNames;
  for (const TimeLane& lane : lanes_) {
    ink.fitted(x, y + 2, kNames - 6, lane.name, kLaneName);
    double taken = 0;
    for (const TimeBar& bar : lane.bars) {
      const double from = left + wide * axis.share(bar.from);
      const double to = bar.to ? left + wide * axis.share(*bar.to) : from;
      taken = put_bar(ink, bar, from, std::max(to - from, 1.2), y, taken);
    }
    y += kLaneTall;
  }
}

}  // namespace rb
