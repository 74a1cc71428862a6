// What a look at a pour works out anew of its runs and trucks. Inside this room.
#pragma once

#include <vector>

#include "check/memory.h"
#include "pour/log/as_it_was.h"

namespace rb {

/// Whether times to set, and with them the mix and its temperature at every moment, are as before.
bool sets_same(const AsItWas& since);

/// Before this moment heads are as they were for all that is known of when the concrete of an
/// element sets: what comes later sets later still.
Seconds sets_until(const PourState& state, ElementMemory& memory, std::size_t e,
                   const AsItWas& since);

/// Before this moment it is as it was when concrete may have come at the latest: a reading of one
/// bay makes it unsaid of the others when they were begun, from the start of the lift on.
Seconds fronts_until(const ElementState& element, Seconds tops_until);

/// Runs begun or changed, and those over what may have come out otherwise since; `heads_until` by
/// element.
void take_up_runs(const Look& look, CheckMemory::Inside& memory, const AsItWas& since,
                  const std::vector<Seconds>& heads_until);
void take_up_trucks(const PourState& state, CheckMemory::Inside& memory, const AsItWas& since);

/// The head of every run taken up.
void look_at_heads(Look& look, CheckMemory::Inside& memory,
                   const std::vector<Seconds>& heads_until);

}  // namespace rb
