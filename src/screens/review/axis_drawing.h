// The time axis drawn, and the finger on it. Inside this room.
#pragma once

#include "screens/entry/stage.h"
#include "screens/review/axis_view.h"

namespace rb::screens {

/// The height it wants.
float axis_height(const Canvas& canvas);

/// `at`: the moment shown; none = as it stands. Changed by a finger on the axis or a step beside
/// it.
void draw_axis(Stage& stage, const Box& box, const AxisView& view, std::optional<Seconds>& at,
               const std::string& told);

}  // namespace rb::screens
