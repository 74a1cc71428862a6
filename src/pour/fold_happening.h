// One event put into the state. Inside this room; fold.h is the way in.
#pragma once

#include "pour/state.h"

namespace rb {

/// Applies log entry `ref` (neither struck nor wrong so far) at its moment, later than all applied
/// before. Marks it as repeating or wrong, with the reason, when it does not count.
void apply_happening(PourState& state, EventRef ref);

}  // namespace rb
