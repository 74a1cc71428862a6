// Internal vibrators by the groups of ACI 309R: the table in SI read in a national cement and
// concrete body's page on compaction equipment. Spacing 1.5 x radius of action, at least 150 mm
// into the layer below, layers up to 500 mm and no deeper than the head is long: from memory of ACI
// 309R. Time in one place 5 to 15 s: from memory; an army training text gives the same (read).
#pragma once

#include <array>

#include "base/quantity.h"
#include "base/result.h"
#include "trade/concrete/placing.h"

namespace rb::trade {

template <class Quantity>
struct Span {
  Quantity least;
  Quantity most;
};

struct InternalVibrator {
  int group;                  ///< 1 to 5
  Span<Length> head;          ///< diameter
  Span<Frequency> frequency;  ///< in concrete
  Span<Length> amplitude;
  Span<Length> radius;      ///< of action
  Span<VolumeRate> output;  ///< compacted by one vibrator
};

const std::array<InternalVibrator, 5>& internal_vibrators();

/// One group. Input error outside 1 to 5.
Result<InternalVibrator> internal_vibrator(int group);

inline constexpr double kInsertSpacingFactor = 1.5;  ///< x radius of action
inline constexpr Length kInsertPenetration = millimetres(150.0);
inline constexpr Length kDeepestLayer = millimetres(500.0);
inline constexpr Span<Seconds> kInsertTime{Seconds{5.0}, Seconds{15.0}};

/// The middle of a group's radius of action, by which spacing is judged (our own choice; show the
/// range beside it: stiff concrete and crowded steel want less).
Length mean_radius(const InternalVibrator& group);

/// The widest spacing of insertions a group allows, by the mean radius. Input error for a group
/// outside 1 to 5 or a factor outside 0.1 to 3.
Result<Length> insert_spacing(int group, double factor = kInsertSpacingFactor);

/// How many insertions a plan area takes on a square grid no wider than a spacing; at least 1.
/// Input error outside 0.01 to 1000 m for the sides, 0.01 to 10 m for the spacing.
Result<int> insertions(Length length, Length width, Length spacing);

/// How many vibrators of a group keep up with a rate of placing, at the group's least output.
/// Input error for a rate outside 0 to 1000 m3/h.
Result<int> vibrators_for(int group, VolumeRate placing);

}  // namespace rb::trade
