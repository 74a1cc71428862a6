// Over the elevation: which element it is, and when its lift is full. Inside this room.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Cut from the top of `in`. Of several elements it is the button that leads to the others.
void draw_elevation_title(Stage& stage, Box& in, const PourView& view);

}  // namespace rb::screens
