// Fixes and strikes: what they make of the log. Inside this room; fold.h is the way in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pour/log/event.h"
#include "pour/log/state.h"

namespace rb {

/// What a fix or strike corrects; null for every other event.
const EventId* corrected(const Event& event);

/// Why a correction cannot stand as log entry `ref`, or nothing. Other events always can.
std::optional<Saying> misaimed(const PourState& state, const Event& event, EventRef ref);

/// Puts all corrections of a log just entered in force.
void apply_corrections(PourState& state);

/// Entries that read, count or are struck otherwise than they were.
using Touched = std::vector<EventRef>;
/// Puts the correction entered last in force.
Touched apply_last_correction(PourState& state);
/// Takes the correction entered last, a fix, out of force again; its own entry is left to the
/// caller.
Touched withdraw_last_fix(PourState& state);

}  // namespace rb
