// The one clock of setting. It runs from when water met cement (a load's ticket, batched), load by
// load, at the rate of ASTM C1074's equivalent age by the load's own temperature, and has two
// sides: what must be done before the concrete sets asks the early one, what must wait until it has
// set asks the late one.
//   - The early side ends with the concrete's workability where the plan says that it ends before
//   the
//     set (limits plastic_share): what must be done before it sets does not count after that.
//   - The mix's own Q holds on both sides. Without it the early side takes the faster of 6600 K and
//     4400 K at that temperature and the late side the slower (ours: held against a published table
//     of setting times in tests/published).
//   - A load's temperature is its own tests' whenever made (early: the warmest; late: the coldest),
//     else the latest test of its mix so far; untested it is taken warm on the early side (the
//     mix's temp_high, else the warmer of its reference and the air) and cold on the late side
//     (temp_low, else the plan's least temperature).
//   - Where no load is known, and no older than the oldest allowed for one that is: early, as old
//     as is allowed; late, as fresh as it can be.
// Readings of penetration (measured_set.h) stand in for the plan's initial set.
#pragma once

#include <vector>

#include "pour/log/state.h"
#include "trade/dose/dose.h"

namespace rb {

enum class SetSide {
  early,  ///< what must be done before it sets, or before its workability ends
  late,   ///< what must wait until it has set
  hard,   ///< the early side of the set itself
};

/// How fast a mix sets at a temperature, against its reference: the side's of the two where its Q
/// is not known.
double set_rate(const Mix& mix, Celsius temp, SetSide side);
/// From water meeting cement to the plan's initial set, at one temperature.
Seconds planned_set(const Mix& mix, Celsius temp, SetSide side);

/// When concrete sets, by the moment it comes. The first step holds before it too.
std::vector<trade::SetStep> set_steps(const PourState& state, std::size_t element,
                                      SetSide side = SetSide::early);
/// Whether the set time of concrete that came then rests on readings, not on the plan.
bool set_measured(const PourState& state, std::size_t element, Seconds came);

/// The mix in use on an element at a moment: of the latest ticket discharged to it (or to no named
/// element) at or before, else the plan's first.
const Mix& mix_at(const PourState& state, std::size_t element, Seconds at);

}  // namespace rb
