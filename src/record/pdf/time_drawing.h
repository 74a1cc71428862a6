// A pour by the clock, drawn: its rise, and under it its timeline on the same axis. Inside this
// room.
#pragma once

#include "record/pdf/ink.h"
#include "record/told/timeline.h"

namespace rb {

class TimeDrawing {
 public:
  TimeDrawing(const PourRecord& pour, const Shown& shown);

  /// Nothing happened that has a place on it.
  [[nodiscard]] bool empty() const { return lanes_.empty(); }
  [[nodiscard]] double height() const;
  /// Its top left corner at (x, y).
  void draw(const Ink& ink, double x, double y, double width) const;

 private:
  [[nodiscard]] double rise_height() const;
  void rise(const Ink& ink, const TimeAxis& axis, double x, double y, double width) const;
  void lanes(const Ink& ink, const TimeAxis& axis, double x, double y, double width) const;

  const Shown& shown_;
  std::vector<TimeLane> lanes_;
  std::vector<RiseCurve> curves_;
};

}  // namespace rb
