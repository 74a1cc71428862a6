// What the checker found, and the strip that says what needs a hand now.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// One place for attention, in words, worst first. It has its own room and covers nothing.
void draw_attention(Stage& stage, const Box& box, const PourView& view, const Plan& plan);

void draw_findings(Stage& stage, const Box& box, FindingsDraft& draft, const PourView& view,
                   const std::vector<Finding>& findings, const Plan& plan);

}  // namespace rb::screens
