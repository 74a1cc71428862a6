#include "pour/plan/row_reach.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "trade/shape/patch.h"

namespace rb {

namespace {

// Of a length along the form, how much of the height it covers.
Length aslant(const Element& element, Length along) {
  return along * std::cos(element.batter_deg * std::numbers::pi / 180.0);
}

}  // namespace

Length reach_up(const Element& element, const Motor& motor) {
  return aslant(element, motor.reach_z);
}

Length reach_up(const Element& element, const Row& row) {
  Length reach;
  for (const Motor& motor : row.motors) reach = std::max(reach, reach_up(element, motor));
  return reach;
}

Length lowest_reached(const Element& element, const Row& row, const Motor& motor) {
  return std::max(Length{}, row.z - reach_up(element, motor));
}

bool reaches(const Motor& motor, Length start, Length end) {
  return motor.x + motor.reach_x > start + trade::kSamePlace &&
         motor.x - motor.reach_x < end - trade::kSamePlace;
}

std::optional<Length> lowest_in_bay(const Element& element, const Row& row, std::size_t bay) {
  const Length start = element.bay_start(bay);
  const Length end = start + element.bays[bay];
  std::optional<Length> lowest;
  for (const Motor& motor : row.motors) {
    if (!reaches(motor, start, end)) continue;
    const Length low = lowest_reached(element, row, motor);
    if (!lowest || low < *lowest) lowest = low;
  }
  return lowest;
}

std::vector<BayReached> bays_reached(const Element& element, const Row& row) {
  std::vector<BayReached> bays;
  Length start;
  for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
    const Length end = start + element.bays[bay];
    std::optional<Length> reach;
    for (const Motor& motor : row.motors) {
      if (reaches(motor, start, end)) reach = std::max(reach.value_or(Length{}), motor.reach_z);
    }
    if (reach) {
      const Length down = aslant(element, *reach);
      const Length press = aslant(element, element.reach_pressure.value_or(*reach * 2.0));
      bays.push_back({bay, std::max(Length{}, row.z - down), std::max(Length{}, row.z - press)});
    }
    start = end;
  }
  return bays;
}

RowSpan span_of(const Element& element, const Row& row) {
  const Length up = reach_up(element, row);
  RowSpan span{std::max(Length{}, row.z - up), row.z + up, element.length, {}};
  for (const Motor& motor : row.motors) {
    span.left = std::min(span.left, motor.x - motor.reach_x);
    span.right = std::max(span.right, motor.x + motor.reach_x);
  }
  span.left = std::max(span.left, Length{});
  span.right = std::min(span.right, element.length);
  return span;
}

}  // namespace rb
