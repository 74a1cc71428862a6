// When a figure is over, or under, its limit: asked here and nowhere else, so that what a rule
// holds to be within, a screen does not call over.
#pragma once

namespace rb {

/// What comes out equal on paper is neither over nor under: sums are off by less than this share.
inline constexpr double kRounding = 1e-9;

template <class Quantity>
bool over(const Quantity& figure, const Quantity& limit) {
  return figure > limit * (1 + kRounding);
}
template <class Quantity>
bool under(const Quantity& figure, const Quantity& limit) {
  return figure < limit * (1 - kRounding);
}

}  // namespace rb
