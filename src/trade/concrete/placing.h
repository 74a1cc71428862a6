// Rate of placing, plan area, rate of rise, time and trucks: arithmetic of volume and time.
// Output = mixer's load x 60 / minutes a batch x mixers, rate of placing = output / plan area,
// placing time = height / rate: read in an army training course on wall forms.
#pragma once

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

using VolumeRate = boost::units::multiply_typeof_helper<Velocity, Area>::type;
constexpr VolumeRate cubic_metres_per_hour(double v) {
  return quantity_of<VolumeRate>(v / 3600.0);
}
constexpr double in_cubic_metres_per_hour(VolumeRate q) {
  return q.value() * 3600.0;
}
constexpr VolumeRate cubic_feet_per_hour(double v) {
  return cubic_metres_per_hour(v * kFoot * kFoot * kFoot);
}
constexpr double in_cubic_feet_per_hour(VolumeRate q) {
  return in_cubic_metres_per_hour(q) / (kFoot * kFoot * kFoot);
}
constexpr Area square_feet(double v) {
  return square_metres(v * kFoot * kFoot);
}
constexpr double in_square_feet(Area a) {
  return in_square_metres(a) / (kFoot * kFoot);
}

/// What mixers (or trucks in turn) deliver: a load each batch time. Input error for a load not over
/// 0 to 50 m3, a batch outside 1 s to 24 h, mixers outside 1 to 100.
Result<VolumeRate> output_rate(Volume load, Seconds batch, int mixers = 1);

/// Length x width of a form. Input error outside 0.01 to 1000 m.
Result<Area> plan_area(Length length, Length width);

/// How fast the concrete rises. Input error for a rate outside 0 to 1000 m3/h or an area outside
/// 0.001 to 100000 m2.
Result<Velocity> rise_of(VolumeRate placing, Area plan);

/// The rate of placing that gives a rise. Input error as rise_of, rise 0 to 3600 m/h.
Result<VolumeRate> placing_for(Velocity rise, Area plan);

/// Time to fill a height at a rate of rise. Input error outside 0 to 50 m, or for a rate not over
/// 0.001 m/h.
Result<Seconds> placing_time(Length height, Velocity rise);

struct TruckPace {
  double per_hour = 0.0;
  Seconds interval;  ///< from one truck to the next
};

/// How often a truck must be emptied to keep a rate of placing. Input error for a rate outside
/// 0.001 to 1000 m3/h or a load not over 0 to 50 m3.
Result<TruckPace> truck_pace(VolumeRate placing, Volume load);

}  // namespace rb::trade
