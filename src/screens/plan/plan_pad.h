// The pad for a figure of a plan: what stands, what is typed, the unit always shown.
#pragma once

#include "screens/entry/stage.h"
#include "screens/view/plan_edit.h"

namespace rb::screens {

/// For edit.field, which must be set; done when it is no longer.
void draw_plan_pad(Stage& stage, const Box& box, PlanEdit& edit);

}  // namespace rb::screens
