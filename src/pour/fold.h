// Adds events up to the state of a pour. Pure: the same events give the same state, anywhere.
#pragma once

#include <span>

#include "base/result.h"
#include "pour/state.h"

namespace rb {

/// `events` in order of entry; the first opens the pour (else an input error). Strikes and fixes
/// are applied first, then the rest in order of `at`, ties in order of entry. An event that cannot
/// be (it names a row the plan does not have, a top above the form) is left out and marked in the
/// log with the reason, so that a book always opens; read_script and admissible() refuse it
/// beforehand.
Result<PourState> fold(std::span<const Event> events);

/// `state` with one more event entered: in place and quick when the event comes last in time and
/// corrects nothing, otherwise by folding anew. The same state as fold() of all the events.
void extend(PourState& state, const Event& event);

/// Whether `event` may follow: an input error with the reason when fold() would mark it wrong, or
/// what it corrects.
Result<void> admissible(const PourState& state, const Event& event);

}  // namespace rb
