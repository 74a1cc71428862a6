#include "trade/pressure/pressure_din18218.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

constexpr Velocity kFastest = metres_per_hour(7.0);
constexpr Seconds kShortestSet = hours(5.0);
constexpr Seconds kLongestSet = hours(20.0);
constexpr UnitWeight kUsual = kilonewtons_per_m3(25.0);

struct Flow {
  FlowClass flow;
  std::string_view text;
  double below_slump_mm;  // the first row the slump is below is its class
  double per_rise;        // kN/m2 for each m/h
  double still;           // kN/m2 at no rise
  double least;           // kN/m2
  double per_hour;        // K1 = 1 + per_hour (tE - 5)
  bool still_too;         // K1 multiplies the part at no rise too
};

// SCC has a formula of its own and only its least value here.
constexpr std::array<Flow, 7> kFlows{{
    {FlowClass::f1, "F1", 25.0, 5.0, 21.0, 25.0, 0.03, true},
    {FlowClass::f2, "F2", 75.0, 10.0, 19.0, 25.0, 0.053, true},
    {FlowClass::f3, "F3", 135.0, 14.0, 18.0, 25.0, 0.077, true},
    {FlowClass::f4, "F4", 195.0, 17.0, 17.0, 25.0, 0.14, true},
    {FlowClass::f5, "F5", 235.0, 30.0, 25.0, 30.0, 0.2, false},
    {FlowClass::f6, "F6", 260.0, 38.0, 25.0, 30.0, 0.2, false},
    {FlowClass::scc, "SCC", 1e9, 0.0, 0.0, 30.0, 0.2, false},
}};

const Flow& row_of(FlowClass flow) {
  const auto* found = std::ranges::find(kFlows, flow, &Flow::flow);
  return found == kFlows.end() ? kFlows.back() : *found;
}

std::optional<Failed> too_fast(Velocity rise) {
  if (rise <= kFastest) return std::nullopt;
  return method_does_not_hold(PressureMethod::din18218,
                              {said("rate of rise {rise} is over the {7 m/h} the method covers"),
                               {{"rise", amount(rise), Rounding::up}}});
}

}  // namespace

std::string_view to_text(FlowClass flow) {
  return row_of(flow).text;
}

FlowClass flow_class_for(Length slump) {
  for (const Flow& row : kFlows) {
    if (in_millimetres(slump) < row.below_slump_mm) return row.flow;
  }
  return FlowClass::scc;
}

double din18218_setting_factor(FlowClass flow, Seconds set_time) {
  return 1.0 + row_of(flow).per_hour * in_hours(std::max(set_time, kShortestSet) - kShortestSet);
}

Result<Pressure> din18218_pressure(FlowClass flow, const PressureCase& c, Velocity rise) {
  if (auto fault = fault_of(c)) return Failed(*std::move(fault));
  if (auto fault = fault_of(rise)) return Failed(*std::move(fault));
  if (auto fault = outside(said("form pressure"), {{said("time to initial set"),
                                                    in_hours(c.set_time), 0.25, 100.0, "h"}})) {
    return Failed(*std::move(fault));
  }
  if (c.set_time > kLongestSet) {
    return method_does_not_hold(
        PressureMethod::din18218,
        {said("initial set after {set} is over the {20 h} the method covers"),
         {{"set", amount(c.set_time, Measure::long_span), Rounding::up}}});
  }
  if (auto refusal = too_fast(rise)) return *std::move(refusal);

  const Flow& row = row_of(flow);
  const double v = in_metres_per_hour(rise);
  const double k1 = din18218_setting_factor(flow, c.set_time);
  const Pressure least = kilopascals(row.least);
  const Pressure head = full_liquid_head(c.unit_weight, c.pour_height);
  if (flow == FlowClass::scc) {
    const double set = in_hours(std::max(c.set_time, kShortestSet));
    return std::min(head,
                    std::max(least, full_liquid_head(c.unit_weight, metres(1.0 + 0.26 * v * set))));
  }
  const double figure =
      row.still_too ? (row.per_rise * v + row.still) * k1 : row.per_rise * v * k1 + row.still;
  const double heavier = std::max<double>(1.0, c.unit_weight / kUsual);
  return std::min(head, std::max(least, kilopascals(figure)) * heavier);
}

Result<Pressure> din18218_pressure(const PressureCase& c, Velocity rise) {
  return din18218_pressure(flow_class_for(c.slump), c, rise);
}

Result<Pressure> din18218_1980_pressure(Consistency1980 consistency, Velocity rise,
                                        Celsius concrete) {
  if (auto fault = fault_of(rise)) return Failed(*std::move(fault));
  if (auto fault = outside(said("form pressure, 1980 edition"),
                           {{said("concrete temperature"), concrete.degrees, 5.0, 25.0, "degC"}})) {
    fault->kind = Error::Kind::refused;
    return Failed(*std::move(fault));
  }
  if (auto refusal = too_fast(rise)) return *std::move(refusal);
  const double warmth = (145.0 - 3.0 * concrete.degrees) / 100.0;
  const double v = in_metres_per_hour(rise);
  switch (consistency) {
    case Consistency1980::k1:
      return kilopascals((5.0 * v + 21.0) * warmth);
    case Consistency1980::k2:
      return kilopascals((10.0 * v + 19.0) * warmth);
    case Consistency1980::k3:
      break;
  }
  return kilopascals((14.0 * v + 18.0) * warmth);
}

}  // namespace rb::trade
