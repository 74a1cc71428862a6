// What stands in a form between two heights, by the section and its taper. Geometry.
#pragma once

#include <span>

#include "base/quantity.h"

namespace rb::trade {

/// An element cut level: a rectangle, or a circle of its thickness.
enum class Section { rect, round };
/// "rect", as a plan has it.
const char* to_text(Section section);
/// Every word of it, in order.
std::span<const char* const> words_of(Section);

/// How thick a section is up its height, in a straight line; the same at both ends where it does
/// not taper.
struct Taper {
  Length foot, top;  ///< at 0 and at `height`
  Length height;     ///< over 0
  [[nodiscard]] Length at(Length z) const;
  [[nodiscard]] bool even() const { return foot == top; }
};

/// In plan, where it is `thick`: `wide` along the face, or a circle.
Area section_area(Section section, Length wide, Length thick);
/// Between two heights, from <= to. A round one is a cone's frustum.
Volume volume_between(Section section, Length wide, const Taper& taper, Length from, Length to);

}  // namespace rb::trade
