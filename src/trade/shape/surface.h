// The top of the concrete in one bay over time: piecewise linear through the measured tops, never
// falling. Before the first reading the height is zero.
#pragma once

#include <optional>
#include <vector>

#include "base/quantity.h"

namespace rb::trade {

struct SurfacePoint {
  Seconds at{};
  Length height;
  bool operator==(const SurfacePoint&) const = default;
};

class TopCurve {
 public:
  /// A measured top. Readings come in order of time. A reading lower than the one before is kept at
  /// that one's height: the higher stands.
  void read(Seconds at, Length height);
  /// The top is known to stand still up to `at` (a lift starts).
  void stand(Seconds at);

  /// Takes the last readings back, down to this many points.
  void take_back(std::size_t points) { points_.resize(points); }

  /// Height at a moment; where two readings share a moment, the later one.
  [[nodiscard]] Length at(Seconds moment) const;
  /// Height just before a moment (differs from at() only where two readings share a moment).
  [[nodiscard]] Length before(Seconds moment) const;
  /// The first moment the top is at or above z; none if it never is. For z at or below zero that is
  /// the first reading.
  [[nodiscard]] std::optional<Seconds> reached(Length z) const;
  /// The last moment before the top rises above z (when concrete begins to cover z); none if never.
  [[nodiscard]] std::optional<Seconds> covered(Length z) const;
  [[nodiscard]] Length standing() const;  ///< after the last reading
  [[nodiscard]] const std::vector<SurfacePoint>& points() const { return points_; }

  /// The readings between which the top rose from one height to another: all that reached() and
  /// covered() of heights between ask.
  [[nodiscard]] TopCurve between(Length low, Length high) const;

  /// The curve as it was at a moment: the readings up to then, and where the top had come by then
  /// on its way to the next.
  [[nodiscard]] TopCurve until(Seconds moment) const;

  bool operator==(const TopCurve&) const = default;

 private:
  std::vector<SurfacePoint> points_;  // both coordinates never falling
};

}  // namespace rb::trade
