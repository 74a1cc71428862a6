// The set time of a mix from the penetration readings logged for it (trade/penetration.h), in place
// of the plan's. Readings of one sample (the same moment mixed) are fitted together. A fit counts
// with six readings (ASTM C403, 9.4: read in a public transcription) and a correlation of 0.98
// (from memory of the same).
#pragma once

#include <optional>

#include "pour/log/state.h"

namespace rb {

/// From water meeting cement to initial set, brought to the mix's reference temperature by the
/// sample's own (logged with its readings; else the latest concrete temperature tested). The ends
/// of the 95 % interval. Of several samples the earliest and the latest ends. While no reading has
/// passed the threshold the line is drawn on beyond them: then the plan's own time stays within the
/// range.
struct MeasuredSet {
  Seconds early{}, late{};
  int readings = 0;
  int samples = 0;
  bool beyond_readings = false;  ///< no sample has passed the threshold yet
};

inline constexpr int kFewestPenetrations = 6;
inline constexpr double kLeastCorrelation = 0.98;

/// Nothing when no sample of the mix has enough readings that agree.
std::optional<MeasuredSet> measured_set(const PourState& state, const Mix& mix);

}  // namespace rb
