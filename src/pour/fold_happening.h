// One event put into the state, and taken out of it again. Inside this room.
#pragma once

#include "pour/state.h"

namespace rb {

/// Applies log entry `ref` (neither struck nor a correction gone wrong) at its moment, later than
/// all applied before, which it follows in PourState::order. Marks it as repeating or wrong, with
/// the reason, when it does not count. What it changed is put down in the state's memory.
void apply_happening(PourState& state, EventRef ref);

/// Takes back the changes made since there were this many of them.
void take_back_changes(PourState& state, std::size_t changes);

}  // namespace rb
