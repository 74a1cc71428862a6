// What an insertion of internal vibrators does, judged by how it was done: it counts where it came
// in time, long enough at a point and close enough together.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "trade/dose/dose.h"
#include "trade/motors/internal_vibrator.h"

namespace rb {

/// Its vibrators' group. The plan's reader lets no other in than 1 to 5.
const trade::InternalVibrator& group_of(const InsertState& insert);
/// The widest its points may stand apart: the plan's factor x the mean radius of action of the
/// group.
Length widest_apart(const Plan& plan, const InsertState& insert);

/// Whether it was before the pour's close: what comes after moves nothing.
bool before_close(const PourState& state, const InsertState& insert);

/// Points a layer of a bay wants at a spacing, the layers of its height, and those of the beams
/// under it, which go with its lowest part.
struct PointsWanted {
  double points = 0, layers = 0, in_beams = 0;
  [[nodiscard]] double all() const { return points * layers + in_beams; }
};
PointsWanted points_wanted(const Plan& plan, const Element& element, std::size_t bay,
                           Length spacing, Length from, Length to);

/// The heights it worked in a bay: from the top at its moment down to where the lift began less
/// depth_below, at most a layer and the depth of a knit. None: it does not count. It counts where
/// its upper half was fresh until it was done (`sets`: the early side), for insert_s_min at a
/// point, no wider apart than allowed.
std::optional<trade::Band> worked_by(const PourState& state, const InsertState& insert,
                                     std::size_t bay, const std::vector<trade::SetStep>& sets);

/// Bay by bay, the heights of an element that insertions which count consolidated: of each the part
/// that had not set before it was done. Those of a lift and bay whose points are told, and fewer
/// than wanted, heal nothing.
std::vector<std::vector<trade::Band>> healed(const PourState& state, std::size_t element,
                                             const std::vector<trade::SetStep>& sets);

}  // namespace rb
