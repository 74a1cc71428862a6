// Concrete reaches a bay: one tap on the bay in the elevation; where bays are drawn too narrow for
// a finger, a tap on the elevation asks which.
#pragma once

#include <vector>

#include "screens/entry/stage.h"

namespace rb::screens {

/// A bay as the elevation draws it.
struct BayColumn {
  Box box;
  float top = 0;  ///< of its concrete
};

/// Marks the bays of the lift being placed that concrete has not reached and those it just did, and
/// takes the taps. Nothing in a lift without such bays.
void offer_bay_starts(Stage& stage, const Box& face, const std::vector<BayColumn>& columns,
                      const PourView& view);

void draw_bay_starts(Stage& stage, const Box& box, BayStartDraft& draft, const PourView& view);

}  // namespace rb::screens
