// STRIPPED: two taps where all is in order, else the gate before it.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// `asked` holds the face that was tapped once.
void offer_strip(Stage& stage, const Box& box, const StripView& strip, const ElementId& element,
                 std::optional<Side>& asked);

}  // namespace rb::screens
