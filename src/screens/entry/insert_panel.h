// Insertions of an internal vibrator, logged for the lift being placed or placed last.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// What the panel starts from: the insertions logged last, so that the same again is two taps.
InsertDraft new_insert(const PourView& view, Moment at);

void draw_insert(Stage& stage, const Box& box, InsertDraft& draft, const PourView& view);

}  // namespace rb::screens
