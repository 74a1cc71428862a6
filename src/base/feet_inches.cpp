#include "base/feet_inches.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

namespace rb {

std::string feet_and_inches(Length height) {
  const auto halves = static_cast<long>(std::lround(in_inches(height) * 2));
  const long size = std::labs(halves);
  const long ft = size / 24;
  const long in = size % 24 / 2;
  const char* half = size % 2 != 0 ? "\u00BD" : "";
  const char* sign = halves < 0 ? "\u2212" : "";
  if (in == 0 && *half != '\0') return fmt::format("{}{}\u2032 {}\u2033", sign, ft, half);
  return fmt::format("{}{}\u2032 {}{}\u2033", sign, ft, in, half);
}

}  // namespace rb
