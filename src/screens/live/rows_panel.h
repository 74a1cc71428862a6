// The rows: one card each with its timer and its RUN or REST button. Always in reach.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// RUN or REST of one row; its caution is said on it. `before` sets its id apart where the row has
/// another button on the screen.
void draw_row_button(Stage& stage, const Box& box, const RowView& row, const PourView& view,
                     const std::string& before = {});

/// What that button does when it is pressed.
void press_row_button(Stage& stage, const RowView& row, const PourView& view);

/// The head a row has if it runs now, against the form's rating; reckoned ones with a "~".
std::string head_words(const Say& say, const RowView& row);
/// What a second of a slow row counts for.
std::string slow_words(const Say& say, const RowView& row);

void draw_rows(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
