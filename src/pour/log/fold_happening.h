// One event put into the state, and taken out of it again. Inside this room.
#pragma once

#include "pour/log/state.h"

namespace rb {

/// Applies log entry `ref` (neither struck nor a correction gone wrong) at its moment, later than
/// all applied before, which it follows in PourState::order. Marks it as repeating or wrong, with
/// the reason, when it does not count. What it changed is put down in the state's memory.
void apply_happening(PourState& state, EventRef ref);

/// Takes back the changes made since there were this many of them; none happened before `from`.
void take_back_changes(PourState& state, std::size_t changes, Seconds from);

/// Leaves a trace of a change that is made, or about to be taken back, at a moment.
void leave_trace(PourState& state, const StateChange& change, Seconds from);
/// Leaves a trace that says all may be other than it was.
void leave_trace_of_all(PourState& state);

}  // namespace rb
