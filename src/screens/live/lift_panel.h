// The lift: how it stands, and the taps that start it, read its top and end it.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Where a top of the lift being placed is typed.
void open_top_pad(Stage& stage, const PourView& view);
void draw_lift(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
