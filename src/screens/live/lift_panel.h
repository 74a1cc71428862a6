// The lift: how it stands, and the taps that start it, read its top and end it.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_lift(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
