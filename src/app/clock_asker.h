// When the user is asked whether the tablet's clock is right: before the first tap of a day on
// which it looks wrong, and not again that day once it was said to be right.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "base/moment.h"
#include "screens/book/clock_question.h"

namespace rb {

/// The day this program was built, its start (UTC).
Moment program_made();

class ClockAsker {
 public:
  /// `last_entry`: when the newest event of the book was entered; none in an empty book.
  ClockAsker(Moment made, std::optional<Moment> last_entry, std::chrono::minutes utc_offset)
      : made_(made), last_entry_(last_entry), utc_offset_(utc_offset) {}

  /// What to ask now, or nothing.
  [[nodiscard]] std::optional<screens::ClockQuestion> question(Moment now) const;
  /// The user said that the clock is right.
  void answered(Moment now) { right_on_ = day_text(now, utc_offset_); }

 private:
  Moment made_;
  std::optional<Moment> last_entry_;
  std::chrono::minutes utc_offset_;
  std::optional<std::string> right_on_;
};

}  // namespace rb
