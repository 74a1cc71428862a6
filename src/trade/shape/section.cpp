#include "trade/shape/section.h"

#include <array>
#include <numbers>

namespace rb::trade {

std::span<const char* const> words_of(Section /*any*/) {
  static constexpr std::array kWords{"rect", "round"};
  return kWords;
}

const char* to_text(Section section) {
  return words_of(section)[static_cast<std::size_t>(section)];
}

Length Taper::at(Length z) const {
  return even() ? foot : foot + (top - foot) * double{z / height};
}

Area section_area(Section section, Length wide, Length thick) {
  return section == Section::round ? std::numbers::pi / 4 * thick * thick : wide * thick;
}

Volume volume_between(Section section, Length wide, const Taper& taper, Length from, Length to) {
  if (taper.even()) return section_area(section, wide, taper.foot) * (to - from);
  const Length low = taper.at(from);
  const Length high = taper.at(to);
  if (section == Section::rect) return wide * ((low + high) / 2.0) * (to - from);
  return std::numbers::pi / 12 * (low * low + low * high + high * high) * (to - from);
}

}  // namespace rb::trade
