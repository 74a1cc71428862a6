// A bay's concrete against the older bay beside it. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

/// When a lift's concrete came in a bay and when that of the bay beside it had stood there, at the
/// middle of what the lift gained there. None: no joint there, or it came first.
struct Beside {
  Seconds came{}, stood{};
};
std::optional<Beside> came_beside(const Look& look, const LiftReport& report, std::size_t bay,
                                  std::size_t beside);

}  // namespace rb
