#include "record/told/timeline.h"

#include <algorithm>
#include <map>

namespace rb {

namespace {

class LaneMaker {
 public:
  LaneMaker(const PourRecord& pour, const Shown& shown) : pour_(pour), shown_(shown) {}

  std::vector<TimeLane> make() {
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
  void lane(const std::string& name, std::vector<TimeBar> bars) {
    if (!bars.empty()) lanes_.push_back({name, std::move(bars)});
  }

  void lifts() {
    std::vector<TimeBar> bars;
    for (const LiftLine& l : pour_.lifts) {
      const std::string name =
          l.element + ", " + shown_.say(said("lift {lift}"), {{"lift", std::to_string(l.lift)}});
      bars.push_back({l.placed_from, l.placed_to, std::to_string(l.lift),
                      name + ": " + span(l.placed_from, l.placed_to)});
    }
    lane(told(said("Lifts")), std::move(bars));
  }

  void runs() {
    std::map<std::string, std::vector<TimeBar>> rows;
    for (const RunLine& r : pour_.runs) {
      const std::string name = r.element + " " + r.row + " " + shown_.told(r.side);
      std::string words = name + ": " + span(r.from, r.to);
      if (r.ran) words += ", " + shown_.figure(amount(*r.ran));
      rows[name].push_back({r.from, r.to, {}, words});
    }
    for (auto& [name, bars] : rows) lane(name, std::move(bars));
  }

  void loads() {
    std::vector<TimeBar> loads, tests;
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
    std::vector<TimeBar> inserts, holds, found;
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
  std::vector<TimeLane> lanes_;
};

// The highest that was read by then.
Length stood(const RiseCurve& curve, Moment at) {
  Length height;
  for (const RiseCurve::Point& point : curve.read) {
    if (point.at <= at) height = point.height;
  }
  return height;
}

}  // namespace

std::vector<TimeLane> timeline_of(const PourRecord& pour, const Shown& shown) {
  return LaneMaker{pour, shown}.make();
}

TimeAxis::TimeAxis(const std::vector<TimeLane>& lanes) {
  from_ = to_ = lanes.front().bars.front().from;
  for (const TimeLane& lane : lanes) {
    for (const TimeBar& bar : lane.bars) {
      from_ = std::min(from_, bar.from);
      to_ = std::max({to_, bar.from, bar.to.value_or(bar.from)});
    }
  }
  to_ = std::max(to_, from_ + std::chrono::minutes{1});
}

double TimeAxis::share(Moment moment) const {
  return between(from_, moment) / between(from_, to_);
}

std::vector<Moment> TimeAxis::ticks(std::chrono::minutes utc_offset) const {
  using std::chrono::minutes;
  constexpr std::size_t kMost = 60;  // of a pour of weeks
  minutes step{1440};
  for (const int each : {5, 10, 15, 30, 60, 120, 240, 480}) {
    if ((to_ - from_) / minutes{each} > 10) continue;
    step = minutes{each};
    break;
  }
  std::vector<Moment> all;
  const auto local = (from_ + utc_offset).time_since_epoch();
  const Moment first = from_ + ((local + step - Moment::duration{1}) / step * step - local);
  for (Moment tick = first; tick <= to_ && all.size() < kMost; tick += step) all.push_back(tick);
  return all;
}

std::vector<RiseCurve> rise_curves(const PourRecord& pour) {
  std::vector<RiseCurve> curves;
  for (const ElementLine& element : pour.elements) {
    RiseCurve curve{element.element, {}, {}};
    for (const TopLine& top : pour.tops) {
      if (top.element != element.element) continue;
      if (!curve.read.empty() && top.height <= curve.read.back().height) continue;
      curve.read.push_back({top.at, top.height});
    }
    if (curve.read.empty()) continue;
    for (const LiftLine& lift : pour.lifts) {
      if (lift.element != element.element || !lift.rise_limit) continue;
      const Length from = stood(curve, lift.placed_from);
      const Length risen = metres(in_metres_per_hour(*lift.rise_limit) *
                                  in_hours(between(lift.placed_from, lift.placed_to)));
      curve.limits.push_back({{lift.placed_from, from}, {lift.placed_to, from + risen}});
    }
    curves.push_back(std::move(curve));
  }
  return curves;
}

}  // namespace rb
