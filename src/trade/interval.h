// Spans of time in which something ran, and how long they are together.
#pragma once

#include <vector>

#include "base/quantity.h"

namespace rb::trade {

struct Interval {
  Seconds from{};
  Seconds to{};  ///< not before `from`
  bool operator==(const Interval&) const = default;
};

/// Sorted spans that neither overlap nor touch, covering the same moments.
std::vector<Interval> united(std::vector<Interval> spans);

/// United spans, made ready to be measured: each look costs a binary search.
class RunningTime {
 public:
  RunningTime() = default;
  explicit RunningTime(std::vector<Interval> spans);
  /// How long it ran in [from, to]; zero when `to` is not after `from`.
  [[nodiscard]] Seconds within(Seconds from, Seconds to) const;
  [[nodiscard]] const std::vector<Interval>& spans() const { return spans_; }

 private:
  [[nodiscard]] Seconds until(Seconds moment) const;
  std::vector<Interval> spans_;
  std::vector<Seconds> before_;  // ran before each span
};

}  // namespace rb::trade
