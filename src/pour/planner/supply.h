// How concrete comes to a planned pour: the loads, and when each is wanted and placed. Inside this
// room.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "pour/planner/planner.h"
#include "trade/concrete/placing.h"

namespace rb {

/// What sums of parts may be off by, before they are rounded up or down.
inline constexpr double kHair = 1e-9;

/// How much concrete stands below a height of an element, openings out.
class VolumeBelow {
 public:
  explicit VolumeBelow(const Element& element);
  [[nodiscard]] Volume at(Length height) const;
  /// The lowest height below which so much stands.
  [[nodiscard]] Length height_of(Volume volume) const;

 private:
  std::vector<std::pair<Length, Volume>> steps_;  ///< in a straight line between them
};

/// So much concrete in loads of at most so much: full ones and, where the rest would be a short
/// one, the last two or all evened out, to a tenth of a cubic metre. None: only with a load under
/// the least. One load where it takes no more.
enum class LastLoad { whole, may_be_short };
std::optional<std::vector<Volume>> in_loads(Volume concrete, Volume load, LastLoad last);

struct Supply {
  trade::VolumeRate pace;  ///< with the pauses
  Volume in_time;          ///< what can be placed of a load, at that pace, until it is too old
  std::vector<PlannedLoad> loads;
  Seconds longest{};  ///< to empty one; what a load may take, where they cannot be parted
  bool parted = false;
};
/// For a plan whose lifts stand in time. A load that was given may leave a last one of any size.
Supply supply_for(const PlanWish& wish, const PlannedPour& planned, LastLoad last);

/// From water meeting cement to the end of workability, the early side.
Seconds workable(const PlanWish& wish);

}  // namespace rb
