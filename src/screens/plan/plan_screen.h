// Making the plan of a new pour by touch: from nothing or from a past pour, an element at a time,
// drawn as it is made; what is wrong with it is said at once. START opens the pour.
#pragma once

#include <vector>

#include "screens/entry/stage.h"
#include "screens/view/pours_view.h"

namespace rb::screens {

/// From what a new pour is made: nothing, the plan begun before, or a past pour's.
void draw_plan_from(Stage& stage, const Box& box, PlanFromDraft& draft,
                    const std::vector<PourCard>& pours, const PoursPart& part);

/// The plan itself. Takes the whole glass.
void draw_plan(Stage& stage, const Box& box, PlanEdit& edit);

}  // namespace rb::screens
