// Sizes of paper.
#pragma once

namespace rb {

struct Paper {
  double width, height;  ///< points
};
inline constexpr Paper kA4{595.276, 841.890};
inline constexpr Paper kLetter{612.0, 792.0};

}  // namespace rb
