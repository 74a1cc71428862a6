// Where a row of motors works over the form: the one reckoning of reach, batter counted in. The
// reach is the plan's, measured along the form; a battered form stands aslant, so that it covers
// less of the height.
#pragma once

#include <optional>
#include <vector>

#include "pour/plan/plan.h"

namespace rb {

/// Half the height a motor works over.
Length reach_up(const Element& element, const Motor& motor);
/// The greatest of a row's motors.
Length reach_up(const Element& element, const Row& row);

/// The lowest height a motor works on, nothing below the element's base.
Length lowest_reached(const Element& element, const Row& row, const Motor& motor);

/// Whether a motor works on any of a bay, from its start to its end.
bool reaches(const Motor& motor, Length start, Length end);

/// The lowest height a row works on in a bay; none when none of its motors reach into it.
std::optional<Length> lowest_in_bay(const Element& element, const Row& row, std::size_t bay);

/// A bay in which a row's motors reach concrete.
struct BayReached {
  std::size_t bay = 0;
  Length low;  ///< the lowest height they work on there
  /// Down to here they make it press as liquid while they run: the plan's reach_pressure_z below
  /// the row, else twice their reach (our own choice: for consolidation a small reach is the
  /// careful one, for pressure a great one); nothing below the element's base.
  Length pressed;
};
std::vector<BayReached> bays_reached(const Element& element, const Row& row);

/// All a row works on: from the base at the least, and within the element's length.
struct RowSpan {
  Length low, high, left, right;
};
RowSpan span_of(const Element& element, const Row& row);

}  // namespace rb
