// The element being planned, drawn to scale by the same hand that draws it during the pour.
#pragma once

#include "screens/entry/stage.h"
#include "screens/view/plan_edit.h"

namespace rb::screens {

void draw_planned(Stage& stage, const Box& box, const PlanDraft& draft, std::size_t element);

}  // namespace rb::screens
