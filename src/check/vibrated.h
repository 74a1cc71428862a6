// Whether anything at all was done to consolidate a lift's concrete in a bay. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

/// Whether a row that reaches the bay's concrete of that lift ran, or an insertion there was
/// logged, from the lift's start to now; for how long and whether in time is not asked.
bool vibrated(const Look& look, const LiftReport& report, std::size_t bay);

/// The bays of a lift that gained concrete and were not vibrated at all; none before the lift is
/// settled.
std::vector<std::size_t> unvibrated_bays(const Look& look, const LiftReport& report);

/// Whether that is every bay that gained concrete: what follows from it needs no telling.
bool never_vibrated(const Look& look, const LiftReport& report);

}  // namespace rb
