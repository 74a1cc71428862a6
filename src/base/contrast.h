// Contrast of two colours as WCAG 2 defines it: relative luminance from sRGB, (L1 + 0.05)/(L2 +
// 0.05) with the lighter on top. Formula, weights and limits read in public notes on WCAG 2.
#pragma once

#include <cstdint>

namespace rb {

struct Rgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Rgb&) const = default;
};

/// 0 (black) to 1 (white).
double relative_luminance(Rgb colour);

/// 1 (the same luminance) to 21 (black on white), whichever way round.
double contrast_ratio(Rgb a, Rgb b);

// WCAG 2: text AA 4.5, AAA 7; large text (18 pt, or 14 pt bold) AA 3, AAA 4.5; parts of controls 3.
inline constexpr double kContrastText = 4.5;
inline constexpr double kContrastTextBest = 7.0;
inline constexpr double kContrastLarge = 3.0;
inline constexpr double kContrastLargeBest = 4.5;
inline constexpr double kContrastControl = 3.0;

}  // namespace rb
