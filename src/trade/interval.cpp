#include "trade/interval.h"

#include <algorithm>

namespace rb::trade {

std::vector<Interval> united(std::vector<Interval> spans) {
  std::sort(spans.begin(), spans.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  std::vector<Interval> result;
  for (const Interval& span : spans) {
    if (span.to <= span.from) continue;
    if (!result.empty() && span.from <= result.back().to) {
      result.back().to = std::max(result.back().to, span.to);
    } else {
      result.push_back(span);
    }
  }
  return result;
}

RunningTime::RunningTime(std::vector<Interval> spans) : spans_(united(std::move(spans))) {
  before_.reserve(spans_.size());
  Seconds sum{};
  for (const Interval& span : spans_) {
    before_.push_back(sum);
    sum += span.to - span.from;
  }
}

Seconds RunningTime::until(Seconds moment) const {
  const auto next = std::upper_bound(spans_.begin(), spans_.end(), moment,
                                     [](Seconds m, const Interval& s) { return m < s.from; });
  if (next == spans_.begin()) return Seconds{};
  const auto i = static_cast<std::size_t>(next - spans_.begin()) - 1;
  return before_[i] + (std::min(moment, spans_[i].to) - spans_[i].from);
}

Seconds RunningTime::within(Seconds from, Seconds to) const {
  if (to <= from || spans_.empty()) return Seconds{};
  return until(to) - until(from);
}

}  // namespace rb::trade
