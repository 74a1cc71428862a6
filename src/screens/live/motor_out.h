// Which motor of a row is out of work: from the tap on nothing shakes where it hangs, until
// something is hung there anew.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_motor_out(Stage& stage, const Box& box, MotorOutDraft& draft, const PourView& view);

}  // namespace rb::screens
