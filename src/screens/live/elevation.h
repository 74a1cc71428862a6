// The element's elevation, drawn to scale: form, bays, planned lifts, openings, the concrete as it
// stands and the rows where they hang.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_elevation(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
