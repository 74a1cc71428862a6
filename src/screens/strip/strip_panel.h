// A stripped face: drawn to scale, its blemishes drawn on it with a finger, repaired, looked at
// again, and held against the log.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_strip(Stage& stage, const Box& box, StripDraft& draft, const PourView& view);

}  // namespace rb::screens
