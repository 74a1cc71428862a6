// The Pour screen: everything a foreman does while concrete rises.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_pour(Stage& stage, const PourView& view, const std::vector<Finding>& findings,
               const Plan& plan);

}  // namespace rb::screens
