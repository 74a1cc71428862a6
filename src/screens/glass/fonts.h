// The typeface in the sizes the screens use, in millimetres on the glass. Built into the program.
#pragma once

#include <array>

#include "screens/glass/scale.h"

struct ImFont;
struct ImFontAtlas;

namespace rb::screens {

/// timer: figures and a colon only.
enum class Face { small, body, strong, title, huge, timer };
inline constexpr int kFaces = 6;

struct Fonts {
  std::array<ImFont*, kFaces> faces{};
  [[nodiscard]] ImFont* operator[](Face face) const {
    return faces[static_cast<std::size_t>(face)];
  }
};

/// Fills an atlas anew. Whoever draws it must load its picture again.
Fonts build_fonts(ImFontAtlas& atlas, const Scale& scale);

/// The next smaller face of the same weight, or the same face when there is none.
Face smaller(Face face);

}  // namespace rb::screens
