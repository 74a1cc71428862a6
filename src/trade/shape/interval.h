// Spans of time in which something ran, and how long they are together.
#pragma once

#include <initializer_list>
#include <memory>
#include <optional>
#include <vector>

#include "base/quantity.h"

namespace rb::trade {

struct Interval {
  Seconds from{};
  Seconds to{};     ///< not before `from`
  double work = 1;  ///< what a second of it counts for
  bool operator==(const Interval&) const = default;
};

/// Sorted spans that do not overlap, covering the same moments; where several did, a second counts
/// for the most of them, never the sum. Those that touch and count alike are one.
std::vector<Interval> united(std::vector<Interval> spans);

/// United spans, made ready to be measured: each look costs a binary search. What a second counts
/// for is weighed in.
class RunningTime {
 public:
  RunningTime() = default;
  explicit RunningTime(std::vector<Interval> spans);
  /// The seconds that count in [from, to]; zero when `to` is not after `from`.
  [[nodiscard]] Seconds within(Seconds from, Seconds to) const;
  [[nodiscard]] const std::vector<Interval>& spans() const { return spans_; }

 private:
  [[nodiscard]] Seconds until(Seconds moment) const;
  std::vector<Interval> spans_;
  std::vector<Seconds> before_;  // counted before each span
};

/// When something ran. Cheap to copy: motors that run together share one.
class Running {
 public:
  Running() = default;
  Running(std::vector<Interval> spans)  // NOLINT(google-explicit-constructor): spans are one
      : time_(spans.empty() ? nullptr : std::make_shared<const RunningTime>(std::move(spans))) {}
  Running(std::initializer_list<Interval> spans) : Running(std::vector<Interval>(spans)) {}

  [[nodiscard]] const std::vector<Interval>& spans() const { return time().spans(); }
  [[nodiscard]] auto begin() const { return spans().begin(); }
  [[nodiscard]] auto end() const { return spans().end(); }
  [[nodiscard]] bool empty() const { return spans().empty(); }
  [[nodiscard]] const RunningTime& time() const;
  /// What of it lies in [from, to].
  [[nodiscard]] Running clipped(Seconds from, Seconds to) const;
  /// The first moment at or after `from` at which it ran.
  [[nodiscard]] std::optional<Seconds> first_from(Seconds from) const;
  /// One and the same, without looking at the spans.
  [[nodiscard]] bool shares(const Running& other) const { return time_ == other.time_; }
  bool operator==(const Running& other) const { return shares(other) || spans() == other.spans(); }

 private:
  std::shared_ptr<const RunningTime> time_;  // none: never ran
};

}  // namespace rb::trade
