// When the program was built. Inside this room.
#pragma once

namespace rb {

/// The day as the build wrote it: UTC, to the millisecond.
const char* made_text();

}  // namespace rb
