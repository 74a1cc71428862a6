// The moment of a tap by both clocks of the tablet.
#pragma once

#include "pour/log/event.h"

namespace rb {

/// Now: the wall clock (UTC, to the millisecond), the seconds since the tablet started (asleep or
/// awake, never stepped) and which start that was ("unknown" where the system does not tell).
Entry entry_now();

}  // namespace rb
