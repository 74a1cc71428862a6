// What a number must lie between before a formula sees it: one table a function, one message for
// all.
#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>

#include "base/result.h"

namespace rb::trade {

/// One number as it would be shown (in the unit named) with the least and the most that make sense.
struct Bound {
  Said name;
  double value;
  double least;
  double most;
  std::string_view unit;
};

/// The first of the numbers that is not finite or lies outside its bounds (both ends are inside),
/// as an Error of kind input: "unit weight -3 kN/m3 is not between 10 kN/m3 and 45 kN/m3".
std::optional<Error> outside(Saying where, std::initializer_list<Bound> bounds);

}  // namespace rb::trade
