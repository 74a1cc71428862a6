// What comes after the last lift: curing, the temperature of the hardening concrete, leave to
// strip, specimens broken, stripped faces.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_after(Stage& stage, const Box& box, AfterDraft& draft, const PourView& view);

}  // namespace rb::screens
