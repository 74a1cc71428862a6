#include "screens/glass/scale.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {
constexpr double kMmPerInch = 25.4;
// Outside these a diagonal is a slip of the finger, not a tablet.
constexpr double kLeastInches = 4.0, kMostInches = 60.0;
}  // namespace

Scale::Scale(int width_px, int height_px, double diagonal_inches)
    : width_(std::max(width_px, 1)), height_(std::max(height_px, 1)) {
  const double inches = std::clamp(diagonal_inches, kLeastInches, kMostInches);
  px_per_mm_ = std::hypot(width_, height_) / (inches * kMmPerInch);
}

float Scale::mm(double millimetres) const {
  // The small allowance keeps 15.0000001 from becoming a pixel more.
  return static_cast<float>(std::ceil(millimetres * px_per_mm_ - 1e-6));
}

}  // namespace rb::screens
