// Where things stand on the Pour screen. The rows are never covered: every panel that opens takes
// the room of the elevation, the lift and the taps.
#pragma once

#include "screens/glass/geometry.h"
#include "screens/glass/scale.h"
#include "screens/view/settings.h"

namespace rb::screens {

struct PourLayout {
  Box back, attention, clock, more;  ///< the head of the screen
  Box light;                         ///< of the mirror, beside the clock; empty without one
  Box work;                          ///< elevation, lift and taps together: panels open here
  Box tall;                          ///< for the tallest panels: more where work is low
  Box typing;                        ///< where letters are typed: work, and more where that is low
  Box elevation, lift, taps;
  Box rows;
};

/// `aspect` is the element's length over its height: a column stands beside the taps, a wall lies
/// over them. `light`: room is left for the mirror's.
PourLayout lay_out_pour(const Scale& scale, double aspect, HandSide rows_on, bool light = false);

}  // namespace rb::screens
