// The inverters: what each was set to, and a trip.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_inverters(Stage& stage, const Box& box, InvertersDraft& draft, const PourView& view);
void draw_speed(Stage& stage, const Box& box, SpeedDraft& draft);

}  // namespace rb::screens
