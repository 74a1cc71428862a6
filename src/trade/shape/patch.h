// A rectangle on the face of an element: an opening, a congested zone, a blemish.
#pragma once

#include <span>

#include "base/quantity.h"

namespace rb::trade {

struct Patch {
  Length x, z;  ///< lower left corner
  Length w, h;
  bool operator==(const Patch&) const = default;
};

/// Lengths nearer than this are the same place; it takes the rounding out of "at the edge of
/// reach".
inline constexpr Length kSamePlace = quantity_of<Length>(1e-9);

inline bool holds_x(const Patch& p, Length x) {
  return x > p.x && x < p.x + p.w;
}
inline bool holds_z(const Patch& p, Length z) {
  return z > p.z && z < p.z + p.h;
}

/// What patches cover of a rectangle; where they overlap it counts once.
Area covered(std::span<const Patch> patches, const Patch& within);

}  // namespace rb::trade
