// Whether an event may happen in a state: a look that changes nothing. Inside this room; fold.h is
// the way in.
#pragma once

#include <optional>

#include "pour/log/log_entry.h"
#include "pour/log/state.h"

namespace rb {

/// Why an event does not count.
struct Refusal {
  LogEntry::Sense sense;  ///< repeats or wrong
  Saying why;
};

/// Whether `entry`, log entry `ref` or the one to come, counts when it happens at its moment, later
/// than all that happened so far. Nothing: it does.
std::optional<Refusal> refused(const PourState& state, const LogEntry& entry, EventRef ref);

/// When a discharge ended, by the pour's clock: an end logged as it comes is the event's own
/// moment, by its own clock.
/// The discharge that goes on and that an event tells the end of; none: it begins another.
std::optional<std::size_t> part_ended(const PourState& state, const TruckState& truck,
                                      const event::Discharge& e);
std::optional<Seconds> discharge_ended(const PourState& state, const LogEntry& entry,
                                       const event::Discharge& e);

}  // namespace rb
