// The rows: one card each with its timer and its RUN or REST button. Always in reach.
#pragma once

#include "screens/stage.h"

namespace rb::screens {

void draw_rows(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
