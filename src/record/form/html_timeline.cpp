// A pour by the clock: a line for each row of motors and each kind of thing that happened.
#include <fmt/format.h>

#include <algorithm>

#include "record/form/html_parts.h"
#include "record/told/timeline.h"

namespace rb {

namespace {

constexpr double kLineWide = 1000, kLineLeft = 150, kLineRight = 16, kLane = 24, kAxis = 26;

double line_x(const TimeAxis& axis, Moment moment) {
  return kLineLeft + (kLineWide - kLineLeft - kLineRight) * axis.share(moment);
}

std::string html_bar(const TimeBar& bar, const TimeAxis& axis, double y) {
  const double x = line_x(axis, bar.from);
  const double w = bar.to ? std::max(line_x(axis, *bar.to) - x, 2.0) : 0;
  std::string out = "<g><title>" + html_text(bar.told) + "</title>";
  if (bar.to) {
    out += fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:g}\" fill=\"#bbc8d2\" "
        "stroke=\"#212e3a\"/>",
        x, y + 4, w, kLane - 8);
  } else {
    out += fmt::format("<path d=\"M{0:.1f} {1:.1f}l5 8l-5 8l-5 -8z\" fill=\"#b45013\"/>", x, y + 4);
  }
  const double wide = 8.5 * static_cast<double>(bar.label.size());
  if (!bar.label.empty() && (!bar.to || w > wide)) {
    out += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\">{}</text>", x + (bar.to ? 3 : 7), y + 17,
                       html_text(bar.label));
  }
  return out + "</g>\n";
}

}  // namespace

std::string html_timeline(const PourRecord& pour, const Shown& shown) {
  const std::vector<TimeLane> lanes = timeline_of(pour, shown);
  if (lanes.empty()) return {};
  const TimeAxis axis{lanes};
  const double tall = kLane * static_cast<double>(lanes.size());
  std::string out = fmt::format("<figure><svg viewBox=\"0 0 {:g} {:g}\" role=\"img\">\n", kLineWide,
                                tall + kAxis);
  for (const Moment tick : axis.ticks(shown.voice().utc_offset)) {
    const double x = line_x(axis, tick);
    const std::string clock = shown.when(tick);
    out += fmt::format(
        "<path d=\"M{0:.1f} 0v{1:g}\" stroke=\"#c6ced4\"/><text x=\"{0:.1f}\" y=\"{2:g}\" "
        "text-anchor=\"middle\">{3}</text>\n",
        x, tall, tall + 18, clock.substr(0, clock.size() - 3));
  }
  double y = 0;
  for (const TimeLane& lane : lanes) {
    out += fmt::format("<text x=\"{:g}\" y=\"{:.1f}\" text-anchor=\"end\">{}</text>\n",
                       kLineLeft - 8, y + 17, html_text(lane.name));
    for (const TimeBar& bar : lane.bars) out += html_bar(bar, axis, y);
    y += kLane;
  }
  return out + "</svg></figure>\n";
}

}  // namespace rb
