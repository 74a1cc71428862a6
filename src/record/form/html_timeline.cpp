// A pour by the clock: a line for each row of motors and each kind of thing that happened.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "record/form/html_parts.h"

namespace rb {

namespace {

constexpr double kLineWide = 1000, kLineLeft = 150, kLineRight = 16, kLane = 24, kAxis = 26;

struct Bar {
  Moment from;
  std::optional<Moment> to;  ///< none: a moment
  std::string label, told;   ///< on the bar, and when it is pointed at
};
struct Lane {
  std::string name;
  std::vector<Bar> bars;
};

class LaneMaker {
 public:
  LaneMaker(const PourRecord& pour, const Shown& shown) : pour_(pour), shown_(shown) {}

  std::vector<Lane> make() {
    lifts();
    runs();
    loads();
    rest();
    return std::move(lanes_);
  }

 private:
  [[nodiscard]] std::string told(Said english) const { return shown_.told(english.english); }
  [[nodiscard]] std::string span(Moment from, const std::optional<Moment>& to) const {
    return to ? shown_.when(from) + " \u2013 " + shown_.when(*to) : shown_.when(from);
  }
  void lane(const std::string& name, std::vector<Bar> bars) {
    if (!bars.empty()) lanes_.push_back({name, std::move(bars)});
  }

  void lifts() {
    std::vector<Bar> bars;
    for (const LiftLine& l : pour_.lifts) {
      const std::string name =
          l.element + ", " + shown_.say(said("lift {lift}"), {{"lift", std::to_string(l.lift)}});
      bars.push_back({l.placed_from, l.placed_to, std::to_string(l.lift),
                      name + ": " + span(l.placed_from, l.placed_to)});
    }
    lane(told(said("Lifts")), std::move(bars));
  }

  void runs() {
    std::map<std::string, std::vector<Bar>> rows;
    for (const RunLine& r : pour_.runs) {
      const std::string name = r.element + " " + r.row + " " + shown_.told(r.side);
      std::string words = name + ": " + span(r.from, r.to);
      if (r.ran) words += ", " + shown_.figure(amount(*r.ran));
      rows[name].push_back({r.from, r.to, {}, words});
    }
    for (auto& [name, bars] : rows) lane(name, std::move(bars));
  }

  void loads() {
    std::vector<Bar> loads, tests;
    for (const TruckLine& t : pour_.loads) {
      if (t.discharged) {
        loads.push_back(
            {*t.discharged, t.ended, t.ticket, t.ticket + ": " + span(*t.discharged, t.ended)});
      }
      if (!t.tested) continue;
      std::string words = t.ticket + ": " + shown_.when(*t.tested);
      if (t.slump) {
        words += ", " + shown_.figure({Measure::small_length, in_metres(*t.slump)});
      }
      if (t.temp) words += ", " + shown_.figure(amount(*t.temp));
      tests.push_back({*t.tested, {}, {}, words});
    }
    lane(told(said("Loads")), std::move(loads));
    lane(told(said("Tests")), std::move(tests));
  }

  void rest() {
    std::vector<Bar> inserts, holds, found;
    for (const InsertLine& i : pour_.inserts) {
      inserts.push_back({i.at, {}, {}, i.element + ": " + shown_.when(i.at)});
    }
    for (const HoldLine& h : pour_.holds) {
      holds.push_back({h.from, h.to, {}, h.reason + ": " + span(h.from, h.to)});
    }
    for (const FindingLine& f : pour_.findings) {
      if (f.from && f.of_cause == 1) {
        found.push_back({*f.from,
                         {},
                         std::to_string(f.cause),
                         f.title + ", " + f.place + ": " + shown_.when(*f.from)});
      }
    }
    lane(told(said("Insertions")), std::move(inserts));
    lane(told(said("Holds")), std::move(holds));
    lane(told(said("Findings")), std::move(found));
  }

  const PourRecord& pour_;
  const Shown& shown_;
  std::vector<Lane> lanes_;
};

class Axis {
 public:
  explicit Axis(const std::vector<Lane>& lanes) {
    from_ = to_ = lanes.front().bars.front().from;
    for (const Lane& lane : lanes) {
      for (const Bar& bar : lane.bars) {
        from_ = std::min(from_, bar.from);
        to_ = std::max({to_, bar.from, bar.to.value_or(bar.from)});
      }
    }
    to_ = std::max(to_, from_ + std::chrono::minutes{1});
  }
  [[nodiscard]] double at(Moment moment) const {
    return kLineLeft + (kLineWide - kLineLeft - kLineRight) * (moment - from_) / (to_ - from_);
  }
  /// Whole steps of the clock: not more than ten.
  [[nodiscard]] std::vector<Moment> ticks(std::chrono::minutes utc_offset) const {
    using std::chrono::minutes;
    minutes step{1440};
    for (const int each : {5, 10, 15, 30, 60, 120, 240, 480}) {
      if ((to_ - from_) / minutes{each} > 10) continue;
      step = minutes{each};
      break;
    }
    std::vector<Moment> all;
    const auto local = (from_ + utc_offset).time_since_epoch();
    const Moment first = from_ + ((local + step - Moment::duration{1}) / step * step - local);
    for (Moment tick = first; tick <= to_; tick += step) {
      all.push_back(tick);
      if (all.size() > 60) break;  // a pour of months
    }
    return all;
  }

 private:
  Moment from_, to_;
};

std::string html_bar(const Bar& bar, const Axis& axis, double y) {
  const double x = axis.at(bar.from);
  const double w = bar.to ? std::max(axis.at(*bar.to) - x, 2.0) : 0;
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
  const std::vector<Lane> lanes = LaneMaker{pour, shown}.make();
  if (lanes.empty()) return {};
  const Axis axis{lanes};
  const double tall = kLane * static_cast<double>(lanes.size());
  std::string out = fmt::format("<figure><svg viewBox=\"0 0 {:g} {:g}\" role=\"img\">\n", kLineWide,
                                tall + kAxis);
  for (const Moment tick : axis.ticks(shown.voice().utc_offset)) {
    const double x = axis.at(tick);
    const std::string clock = shown.when(tick);
    out += fmt::format(
        "<path d=\"M{0:.1f} 0v{1:g}\" stroke=\"#c6ced4\"/><text x=\"{0:.1f}\" y=\"{2:g}\" "
        "text-anchor=\"middle\">{3}</text>\n",
        x, tall, tall + 18, clock.substr(0, clock.size() - 3));
  }
  double y = 0;
  for (const Lane& lane : lanes) {
    out += fmt::format("<text x=\"{:g}\" y=\"{:.1f}\" text-anchor=\"end\">{}</text>\n",
                       kLineLeft - 8, y + 17, html_text(lane.name));
    for (const Bar& bar : lane.bars) out += html_bar(bar, axis, y);
    y += kLane;
  }
  return out + "</svg></figure>\n";
}

}  // namespace rb
