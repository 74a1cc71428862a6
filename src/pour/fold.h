// Adds events up to the state of a pour. Pure: the same events give the same state, anywhere.
#pragma once

#include <span>

#include "base/result.h"
#include "pour/state.h"

namespace rb {

/// `events` in order of entry; one of them opens the pour. Fixes and strikes are applied first, then
/// the rest in order of `at`, ties in order of entry. Events that name what the plan does not have
/// are an error naming the event (read_script and the screens refuse them before they are kept).
Result<PourState> fold(std::span<const Event> events);

/// Whether `event` may follow `state`: that it names elements, rows, bays, tickets and targets that
/// are there, and heights within the form. The same checks fold() makes.
Result<void> admissible(const PourState& state, const Event& event);

}  // namespace rb
