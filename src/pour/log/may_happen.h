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

// Of what is reviewed, signed, enrolled and amended: may_review.cpp.

/// Who signs has the role in the plan, one of his own only; where a key signs it is his newest.
std::optional<Refusal> refused_review(const PourState& state, const LogEntry& entry,
                                      const event::Sign& sign);
/// Made by the person, and witnessed by somebody of another role as soon as such a one has a key.
std::optional<Refusal> refused_review(const PourState& state, const LogEntry& entry,
                                      const event::Enrol& enrol);
/// Only what stood in the book before log entry `ref` can have been meant.
std::optional<Refusal> refused_review(const PourState& state, EventRef ref,
                                      const event::Repair& repair);
std::optional<Refusal> refused_review(const PourState& state, EventRef ref,
                                      const event::Reinspect& reinspect);
std::optional<Refusal> refused_review(const PourState& state, EventRef ref,
                                      const event::Photo& photo);
std::optional<Refusal> refused_review(const PourState& state, const event::Accept& accept);
std::optional<Refusal> refused_review(const PourState& state, const event::SendBack& sent);
std::optional<Refusal> refused_review(const PourState& state, const event::MotorOut& out);
/// Of the paths of amend.h, read by the plan's own reader; no row is moved that has run by `at`.
std::optional<Refusal> refused_review(const PourState& state, Seconds at,
                                      const event::Amend& amend);

}  // namespace rb
