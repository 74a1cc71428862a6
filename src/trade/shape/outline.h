// What is drawn on a face with a finger: a closed line of points.
#pragma once

#include <span>

#include "base/quantity.h"

namespace rb::trade {

struct FacePoint {
  Length x, z;
  bool operator==(const FacePoint&) const = default;
};

/// The area inside, the last point joined to the first (the surveyor's sum over the corners); of a
/// line that crosses itself the parts gone round the other way count against the rest.
Area area_of(std::span<const FacePoint> outline);

}  // namespace rb::trade
