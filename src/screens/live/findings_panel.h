// What the checker found, a card a cause.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_findings(Stage& stage, const Box& box, FindingsDraft& draft, const PourView& view,
                   const std::vector<Finding>& findings, const Plan& plan);

}  // namespace rb::screens
