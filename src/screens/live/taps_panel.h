// The last taps, each kept with its time and each with a way to put it right.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// The few latest beside the pour.
void draw_last_taps(Stage& stage, const Box& box, const PourView& view);

/// All of them, a page at a time.
void draw_all_taps(Stage& stage, const Box& box, TapsDraft& draft, const PourView& view);

}  // namespace rb::screens
