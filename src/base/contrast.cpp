#include "base/contrast.h"

#include <algorithm>
#include <cmath>

namespace rb {
namespace {

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

}  // namespace

double relative_luminance(Rgb colour) {
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

double contrast_ratio(Rgb a, Rgb b) {
  const auto [darker, lighter] = std::minmax({relative_luminance(a), relative_luminance(b)});
  return (lighter + 0.05) / (darker + 0.05);
}

}  // namespace rb
