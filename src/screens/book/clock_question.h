// Is the tablet's clock right? Asked before the first tap of a day when it looks wrong.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// A clock further than this behind the book's last entry is asked about (a choice of this
/// project).
inline constexpr Seconds kClockBehindBook{86400};
/// And one further than this after it, or after the program was made.
inline constexpr Seconds kClockAheadOfBook{2.0 * 365.25 * 86400};
inline constexpr Seconds kClockFarAhead{20.0 * 365.25 * 86400};

/// What is odd about `now`: it lies before the program was made, over a day before the last entry
/// of the book, over two years after it, or twenty years after the program was made. Pure.
ClockQuestion doubt_of_clock(Moment now, Moment made, std::optional<Moment> last_entry);

/// Asks; the answer is ClockIsRight or Quit.
void draw_clock_question(Stage& stage, const ClockQuestion& question);

}  // namespace rb::screens
