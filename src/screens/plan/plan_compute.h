// Rows, lifts and motors computed for an element of a plan: the button, and the answer in words.
#pragma once

#include "screens/entry/stage.h"
#include "screens/view/plan_edit.h"

namespace rb::screens {

/// COMPUTE; it waits for the figures the planner has no default for.
void draw_compute_button(Stage& stage, const Box& box, PlanEdit& edit);

/// PAPER: the run sheet of what was computed, to be printed; only when it was.
void draw_paper_button(Stage& stage, const Box& box, const PlanEdit& edit);

/// What is missing, what the planner found, or which limit forbids it; and who must agree.
void draw_computed(Stage& stage, const Box& box, const PlanEdit& edit);

}  // namespace rb::screens
