// What the window shows when the book could not be opened: what ails it, what to do, and the ways
// on.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Asks for TryAgain, OpenForReading (where that may do) or Quit.
void draw_failure(Stage& stage, const FailureDraft& failure);

/// What ails the book and what to do, for a line elsewhere.
Word failure_word(BookTrouble trouble);
Word failure_advice(BookTrouble trouble);

/// Whether the book may still be read where it could not be opened for writing.
bool may_still_read(BookTrouble trouble);

}  // namespace rb::screens
