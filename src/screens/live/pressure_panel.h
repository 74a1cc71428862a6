// What the form bears now, drawn up its height against its rating.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_pressure(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
