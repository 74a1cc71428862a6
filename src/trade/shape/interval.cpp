#include "trade/shape/interval.h"

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

const RunningTime& Running::time() const {
  static const RunningTime never;
  return time_ ? *time_ : never;
}

Running Running::clipped(Seconds from, Seconds to) const {
  const auto& all = spans();
  const auto first = std::upper_bound(all.begin(), all.end(), from,
                                      [](Seconds m, const Interval& s) { return m < s.to; });
  std::vector<Interval> inside;
  for (auto span = first; span != all.end() && span->from < to; ++span) {
    inside.push_back({std::max(span->from, from), std::min(span->to, to)});
  }
  return inside == all ? *this : Running{std::move(inside)};
}

std::optional<Seconds> Running::first_from(Seconds from) const {
  const auto& all = spans();
  const auto next = std::upper_bound(all.begin(), all.end(), from,
                                     [](Seconds m, const Interval& s) { return m < s.to; });
  if (next == all.end()) return std::nullopt;
  return std::max(next->from, from);
}

}  // namespace rb::trade
