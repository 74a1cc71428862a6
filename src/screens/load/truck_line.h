// A load as a line: how old it is, what was tested of it, and its discharge by one tap.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_truck_line(Stage& stage, const Box& box, const TruckView& truck, const PourView& view);

/// Whether a load waits or discharges.
bool truck_is_here(const PourView& view);
/// The load that discharges, or waits longest.
void draw_truck_card(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
