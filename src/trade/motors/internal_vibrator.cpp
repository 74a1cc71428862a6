#include "trade/motors/internal_vibrator.h"

#include <algorithm>
#include <cmath>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

constexpr Span<Length> mm(double least, double most) {
  return {millimetres(least), millimetres(most)};
}
constexpr Span<Frequency> hz(double least, double most) {
  return {hertz(least), hertz(most)};
}
constexpr Span<VolumeRate> m3h(double least, double most) {
  return {cubic_metres_per_hour(least), cubic_metres_per_hour(most)};
}

constexpr std::array<InternalVibrator, 5> kGroups{{
    {1, mm(20, 40), hz(150, 250), mm(0.4, 0.8), mm(80, 150), m3h(0.8, 4)},
    {2, mm(30, 60), hz(140, 210), mm(0.5, 1.0), mm(130, 250), m3h(2.3, 8)},
    {3, mm(50, 90), hz(130, 200), mm(0.6, 1.3), mm(180, 360), m3h(4.6, 15)},
    {4, mm(80, 150), hz(120, 180), mm(0.8, 1.5), mm(300, 500), m3h(11, 31)},
    {5, mm(130, 180), hz(90, 140), mm(1.0, 2.0), mm(400, 600), m3h(19, 38)},
}};

// Whole steps that cover a length; a hair of slack, so that 3 x 0.27 m is 3 steps, not 4.
int steps(double length, double step) {
  return std::max(1, static_cast<int>(std::ceil(length / step - 1e-9)));
}

}  // namespace

const std::array<InternalVibrator, 5>& internal_vibrators() {
  return kGroups;
}

Result<InternalVibrator> internal_vibrator(int group) {
  if (auto fault = outside(said("internal vibrator"),
                           {{said("group"), static_cast<double>(group), 1.0, 5.0, ""}})) {
    return Failed(*std::move(fault));
  }
  return kGroups.at(static_cast<std::size_t>(group - 1));
}

Length mean_radius(const InternalVibrator& group) {
  return (group.radius.least + group.radius.most) * 0.5;
}

Result<Length> insert_spacing(int group, double factor) {
  const auto vibrator = internal_vibrator(group);
  if (!vibrator) return Failed(vibrator.error());
  if (auto fault = outside(said("insertions"), {{said("spacing factor"), factor, 0.1, 3.0, ""}})) {
    return Failed(*std::move(fault));
  }
  return mean_radius(*vibrator) * factor;
}

Result<int> insertions(Length length, Length width, Length spacing) {
  if (auto fault =
          outside(said("insertions"), {{said("length"), in_metres(length), 0.01, 1000.0, "m"},
                                       {said("width"), in_metres(width), 0.01, 1000.0, "m"},
                                       {said("spacing"), in_metres(spacing), 0.01, 10.0, "m"}})) {
    return Failed(*std::move(fault));
  }
  return steps(in_metres(length), in_metres(spacing)) * steps(in_metres(width), in_metres(spacing));
}

Result<int> vibrators_for(int group, VolumeRate placing) {
  const auto vibrator = internal_vibrator(group);
  if (!vibrator) return Failed(vibrator.error());
  if (auto fault = outside(
          said("internal vibrators"),
          {{said("rate of placing"), in_cubic_metres_per_hour(placing), 0.0, 1000.0, "m3/h"}})) {
    return Failed(*std::move(fault));
  }
  return steps(in_cubic_metres_per_hour(placing), in_cubic_metres_per_hour(vibrator->output.least));
}

}  // namespace rb::trade
