// The lateral pressure a row brings on while it runs: full liquid from the top of the concrete its
// motors reach down to where they make it press as liquid (row_reach.h), no lower than what has set
// there by the late side of its time, bay by bay. The one reckoning of it: RUN, the rules and the
// form's pressure ask here.
#pragma once

#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/form.h"

namespace rb {

/// A bay's top with its concrete come as late as it may have: where nobody said when a bay of a
/// lift was begun, each height came with its reading.
trade::TopCurve latest_top(const ElementState& there, std::size_t bay);

/// Bay by bay, up to where the concrete is past the late side of its time to set, at a moment.
std::vector<Length> set_floors(const PourState& state, std::size_t element, Seconds at);
/// The same with set_steps() of the late side known.
std::vector<Length> set_floors(const ElementState& there, const std::vector<trade::SetStep>& late,
                               Seconds at);

/// The greatest depth of liquid that a row brings on while it runs: concrete comes up meanwhile,
/// and what sets presses no longer from then on.
Length deepest_pressed(const PourState& state, std::size_t element,
                       const std::vector<BayReached>& bays, Seconds from, Seconds to);

/// The greatest depth of liquid over bays with their tops and floors at these heights.
Length deepest_pressed(const std::vector<BayReached>& bays, const std::vector<Length>& tops,
                       const std::vector<Length>& floors);

}  // namespace rb
