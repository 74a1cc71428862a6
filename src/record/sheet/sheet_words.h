// Words and figures of a run sheet in its reader's language and units. Inside this room.
#pragma once

#include <string>
#include <vector>

#include "record/sheet/run_sheet.h"

namespace rb {

struct SheetStep {
  std::string says;
  bool hold = false;
};

class SheetWords {
 public:
  SheetWords(const PlannedPour& planned, RunSheetManner manner);

  [[nodiscard]] const PlannedPour& planned() const { return planned_; }
  [[nodiscard]] const Element& element() const { return planned_.plan.elements.front(); }

  [[nodiscard]] std::string say(const Saying& saying) const;
  /// A text with braces of its own, as it stands in the language.
  [[nodiscard]] std::string told_as(Said text) const;
  [[nodiscard]] std::string amount_in(const Amount& figure, Rounding r = Rounding::nearest) const;
  /// Metres, or feet and inches.
  [[nodiscard]] std::string length(Length length) const;
  [[nodiscard]] std::string span(Seconds span) const;
  /// The clock's, or hours and minutes from the first lift's start; never later than it is.
  [[nodiscard]] std::string clock(Seconds at) const;
  [[nodiscard]] std::string row_name(std::size_t row) const;
  [[nodiscard]] std::string motors(std::size_t row) const;
  [[nodiscard]] static std::string motors_of(const std::vector<MotorId>& motors);
  [[nodiscard]] bool of_deck() const { return element().kind == ElementKind::deck; }
  /// The widest that points of the planned vibrators stand apart.
  [[nodiscard]] static Amount points_apart(const PlanWish& wish);
  /// The head a row brings at the end of a lift.
  [[nodiscard]] Pressure head_on(std::size_t row, const LiftStep& lift, const PlanWish& wish) const;
  /// The lower of the designer's and the method's rate; none: any.
  [[nodiscard]] std::optional<Velocity> most_rise(const PlanWish& wish) const;

  [[nodiscard]] SheetStep tell_step(const RunStep& step, const PlanWish& wish) const;

 private:
  [[nodiscard]] std::string tell_move(const MotorsMove& move) const;
  [[nodiscard]] std::string tell_insert(const LiftStep& lift, const PlanWish& wish) const;
  [[nodiscard]] SheetStep tell_deck_step(const RunStep& step, const PlanWish& wish) const;
  [[nodiscard]] std::string rows_of(const LiftStep& lift) const;

  const PlannedPour& planned_;
  RunSheetManner manner_;
};

}  // namespace rb
