// The list of pours.
#pragma once

#include <vector>

#include "screens/entry/stage.h"
#include "screens/view/pours_view.h"

namespace rb::screens {

/// `pours` is the part of the list that `part` tells; `opening`: something is being read.
void draw_pours(Stage& stage, const std::vector<PourCard>& pours, const PoursPart& part,
                bool opening);

}  // namespace rb::screens
