// Adds events up to the state of a pour. Pure: the same events give the same state, anywhere.
#pragma once

#include <span>

#include "base/result.h"
#include "pour/log/event.h"
#include "pour/log/state.h"

namespace rb {

/// `events` in order of entry; the first opens the pour (else an input error). Strikes and fixes
/// are applied first, then the rest in order of `at`, ties in order of entry. An event that cannot
/// be (it names a row the plan does not have, a top above the form) is left out and marked in the
/// log with the reason, so that a book always opens; read_script and admit() refuse it
/// beforehand.
Result<PourState> fold(std::span<const Event> events);

/// `state` with one more event entered. The same state as fold() of all the events, at the cost of
/// what the event touches: one that comes last in time is put in place; one with an earlier moment,
/// or a correction, lets only what happened from there on happen anew. (Only a change to the
/// opening of the pour, or an event before it, folds all anew.)
void extend(PourState& state, const Event& event);

/// The same when `event` may follow, judged on the way; else an input error with the reason fold()
/// would mark it, or what it corrects, as wrong, and the state is as it was.
Result<void> admit(PourState& state, const Event& event);

/// Whether admit() would take it. Copies the state to judge a fix or an event that does not come
/// last in time, and for no other.
Result<void> admissible(const PourState& state, const Event& event);

/// Gives the event entered last the id the book keeps it under; it had none.
void set_id(PourState& state, EventId id);

}  // namespace rb
