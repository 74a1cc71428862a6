// The head each row would run under now: of what was read, or of what stands about now if that is
// more, for tops are read now and then and the concrete comes on. The one figure that buttons,
// lists of what to run and cautions go by.
#pragma once

#include <vector>

#include "pour/log/state.h"
#include "pour/plan/verdicts.h"

namespace rb {

struct RowHead {
  Pressure head;
  bool about = false;  ///< reckoned on from the last reading
  HeadVerdict verdict = HeadVerdict::unrated;
  bool reached = false;  ///< some concrete stands in the reach of its motors
};
/// One a row of the element.
std::vector<RowHead> heads_now(const PourState& state, std::size_t element, Seconds at);

}  // namespace rb
