#include "trade/shape/interval.h"

#include <algorithm>

namespace rb::trade {

namespace {

// Of spans sorted by their beginning, cut where one begins or ends: each piece counts for the most
// of those that hold it.
std::vector<Interval> weighed(const std::vector<Interval>& spans) {
  std::vector<Seconds> edges;
  for (const Interval& span : spans) {
    if (span.to <= span.from) continue;
    edges.push_back(span.from);
    edges.push_back(span.to);
  }
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  std::vector<Interval> result;
  std::vector<Interval> on;
  auto next = spans.begin();
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const Seconds from = edges[i], to = edges[i + 1];
    for (; next != spans.end() && next->from <= from; ++next) on.push_back(*next);
    std::erase_if(on, [&](const Interval& span) { return span.to <= from; });
    if (on.empty()) continue;
    double work = 0;
    for (const Interval& span : on) work = std::max(work, span.work);
    if (!result.empty() && result.back().to == from && result.back().work == work) {
      result.back().to = to;
    } else {
      result.push_back({from, to, work});
    }
  }
  return result;
}

}  // namespace

std::vector<Interval> united(std::vector<Interval> spans) {
  std::sort(spans.begin(), spans.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  if (std::any_of(spans.begin(), spans.end(),
                  [&](const Interval& span) { return span.work != spans.front().work; })) {
    return weighed(spans);
  }
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
    sum += (span.to - span.from) * span.work;
  }
}

Seconds RunningTime::until(Seconds moment) const {
  const auto next = std::upper_bound(spans_.begin(), spans_.end(), moment,
                                     [](Seconds m, const Interval& s) { return m < s.from; });
  if (next == spans_.begin()) return Seconds{};
  const auto i = static_cast<std::size_t>(next - spans_.begin()) - 1;
  return before_[i] + (std::min(moment, spans_[i].to) - spans_[i].from) * spans_[i].work;
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
    inside.push_back({std::max(span->from, from), std::min(span->to, to), span->work});
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
