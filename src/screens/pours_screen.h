// The list of pours.
#pragma once

#include <vector>

#include "screens/pours_view.h"
#include "screens/stage.h"

namespace rb::screens {

void draw_pours(Stage& stage, const std::vector<PourCard>& pours);

}  // namespace rb::screens
