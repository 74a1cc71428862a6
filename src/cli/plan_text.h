// A planned pour as a person reads it at a terminal, and as JSON.
#pragma once

#include <string>

#include "cli/plan_inputs.h"
#include "pour/planner/planner.h"

namespace rb {

/// The layout, the pace, what binds, the run sheet, and what was taken for granted; SI and US.
std::string plan_text(const PlannedPour& planned, const PlanRequest& request);

/// SI, unrounded: {"plan", "before", "lifts", "pace", "limits"}; the plan as in a pour script.
std::string plan_json(const PlannedPour& planned);

}  // namespace rb
