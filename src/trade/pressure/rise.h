// How fast the concrete rose, exactly, from its top's curve.
#pragma once

#include "trade/shape/surface.h"

namespace rb::trade {

/// The largest [h(t + window) - h(t)] / window over all windows that touch [from, to]. Exact: the
/// gain bends only where one end of the window meets a reading.
Velocity worst_rise(const TopCurve& top, Seconds window, Seconds from, Seconds to);

/// The window it happens in: where it begins. The first of several that are equal.
struct WorstWindow {
  Seconds begins{};
  Velocity rise;
};
WorstWindow worst_window(const TopCurve& top, Seconds window, Seconds from, Seconds to);

}  // namespace rb::trade
