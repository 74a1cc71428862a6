// One tap of a list: when, what, how it stands with the book, and the way to put it right.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Opens the correction of a tap.
CorrectDraft correct_draft(const TapView& tap);

void draw_tap(Stage& stage, const Box& box, const TapView& tap, const PourView& view);

}  // namespace rb::screens
