// What was not known as a tap was made, told later as a correction of it.
#pragma once

#include "screens/entry/stage.h"

namespace rb {
struct Event;
}

namespace rb::screens {

/// A past tap as an event, to be corrected.
Event event_of(const ToldTap& tap);

/// Keeps that a tap was what it is now known to be; nothing where it reads so already.
void keep_told_later(Stage& stage, const ToldTap& tap, const Happening& what, Moment at);

}  // namespace rb::screens
