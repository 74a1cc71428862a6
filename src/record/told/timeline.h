// A pour by the clock: a line for each row of motors and each kind of thing that happened, and the
// rise of its concrete.
#pragma once

#include <string>
#include <vector>

#include "record/told/shown.h"

namespace rb {

struct TimeBar {
  Moment from;
  std::optional<Moment> to;  ///< none: a moment
  std::string label, told;   ///< on the bar, and when it is pointed at
};
struct TimeLane {
  std::string name;
  std::vector<TimeBar> bars;  ///< never empty
};
/// Lifts, runs row by row, loads, tests, insertions, holds, findings; what did not happen is left
/// out.
std::vector<TimeLane> timeline_of(const PourRecord& pour, const Shown& shown);

/// From the first to the last of what the lanes hold.
class TimeAxis {
 public:
  explicit TimeAxis(const std::vector<TimeLane>& lanes);
  /// 0 at its start, 1 at its end.
  [[nodiscard]] double share(Moment moment) const;
  /// Whole steps of the clock: not more than ten, but of a pour of weeks.
  [[nodiscard]] std::vector<Moment> ticks(std::chrono::minutes utc_offset) const;

 private:
  Moment from_, to_;
};

/// The highest top of an element as it was read, and how fast it might have risen.
struct RiseCurve {
  struct Point {
    Moment at;
    Length height;
  };
  std::string element;
  std::vector<Point> read;
  /// From each lift's start as fast as its limit allows, to the lift's end.
  std::vector<std::pair<Point, Point>> limits;
};
/// One an element that any top was read of.
std::vector<RiseCurve> rise_curves(const PourRecord& pour);

}  // namespace rb
