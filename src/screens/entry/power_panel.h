// The inverters: what each was set to, and a trip.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_inverters(Stage& stage, const Box& box, InvertersDraft& draft, const PourView& view);
/// Typed, or one of the last.
void draw_speed(Stage& stage, const Box& box, SpeedDraft& draft, const PourView& view,
                const Plan& plan);

}  // namespace rb::screens
