// How far up a bay's concrete has set. Where loads set out of turn the highest that has set counts:
// what lies over it presses on nothing below it.
#pragma once

#include <optional>
#include <span>

#include "trade/dose/dose.h"

namespace rb::trade {

/// The latest moment at which concrete came that had set by a moment, that moment counted in or
/// not: a top that never falls had set up to its height then. None: nothing had.
std::optional<Seconds> came_and_set(std::span<const SetStep> sets, Seconds at, bool counted_in);

/// The greatest height at which concrete had set by a moment, that moment counted in; zero: none
/// had. `sets`: as Face::sets.
Length set_by(const TopCurve& top, std::span<const SetStep> sets, Seconds at);
/// The same just before the moment: a load that sets as one is still fresh at the moment it does.
Length set_before(const TopCurve& top, std::span<const SetStep> sets, Seconds at);

}  // namespace rb::trade
