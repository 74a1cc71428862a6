#include "trade/concrete/placing.h"

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

Bound bound(Volume load) {
  return {said("load"), in_cubic_metres(load), 0.001, 50.0, "m3"};
}
Bound bound(Area plan) {
  return {said("plan area"), in_square_metres(plan), 0.001, 1e5, "m2"};
}
Bound bound(VolumeRate placing, double least) {
  return {said("rate of placing"), in_cubic_metres_per_hour(placing), least, 1000.0, "m3/h"};
}
Bound bound(Velocity rise, double least) {
  return {said("rate of rise"), in_metres_per_hour(rise), least, 3600.0, "m/h"};
}

}  // namespace

Result<VolumeRate> output_rate(Volume load, Seconds batch, int mixers) {
  if (auto fault = outside(said("output"),
                           {bound(load),
                            {said("batch time"), in_seconds(batch), 1.0, 86400.0, "s"},
                            {said("mixers"), static_cast<double>(mixers), 1.0, 100.0, ""}})) {
    return Failed(*std::move(fault));
  }
  return quantity_of<VolumeRate>(load.value() / in_seconds(batch) * mixers);
}

Result<Area> plan_area(Length length, Length width) {
  if (auto fault =
          outside(said("plan area"), {{said("length"), in_metres(length), 0.01, 1000.0, "m"},
                                      {said("width"), in_metres(width), 0.01, 1000.0, "m"}})) {
    return Failed(*std::move(fault));
  }
  return length * width;
}

Result<Velocity> rise_of(VolumeRate placing, Area plan) {
  if (auto fault = outside(said("rise"), {bound(placing, 0.0), bound(plan)})) {
    return Failed(*std::move(fault));
  }
  return placing / plan;
}

Result<VolumeRate> placing_for(Velocity rise, Area plan) {
  if (auto fault = outside(said("placing"), {bound(rise, 0.0), bound(plan)})) {
    return Failed(*std::move(fault));
  }
  return rise * plan;
}

Result<Seconds> placing_time(Length height, Velocity rise) {
  if (auto fault =
          outside(said("placing time"),
                  {{said("height"), in_metres(height), 0.0, 50.0, "m"}, bound(rise, 0.001)})) {
    return Failed(*std::move(fault));
  }
  return seconds(height.value() / rise.value());
}

Result<TruckPace> truck_pace(VolumeRate placing, Volume load) {
  if (auto fault = outside(said("trucks"), {bound(placing, 0.001), bound(load)})) {
    return Failed(*std::move(fault));
  }
  const Seconds interval = seconds(load.value() / placing.value());
  return TruckPace{3600.0 / in_seconds(interval), interval};
}

}  // namespace rb::trade
