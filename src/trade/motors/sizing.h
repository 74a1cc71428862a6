// How many form vibrators a face wants, where they hang and which lifts each row works for.
//   Along the form: reaches touch, and each motor has the force for the form and the concrete in
//   its share of the face (force.h: from memory of ACI 309R).
//   Up the form: rows overlap by the knitting depth at least. Each lift takes as few rows as cover
//   it and the knitting depth of the lift below; of rows that do, the higher (it brings less head).
//   Head: while a row runs all down to its lower reach is liquid; 5 % of the form's rating is kept
//   for tops placed a little high (our own choice).
//   Lifts 250 to 500 mm: ACI 309R gives layers of 10 to 15 in under form vibrators and about 20 in
//   for internal ones (from memory).
//   Leapfrog: a row hangs while the lift before its first is placed, and its motors move on while
//   the lift after its last is (our own choice).
// A first layout: the form's designer must agree to vibrators on it, and trial runs decide.
#pragma once

#include <optional>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

inline constexpr double kHeadKept = 0.05;
inline constexpr Length kThinnestLift = millimetres(250.0);

/// One kind of motor, with the half-width and half-height it works over on this form.
struct MotorSpec {
  Force force;
  Length reach_x, reach_z;
  /// How far below it the concrete presses as liquid; none: twice reach_z (our own choice).
  std::optional<Length> reach_pressure{};
};

struct SizingCase {
  Length length, height, thickness;
  UnitWeight unit_weight;
  MassPerArea form_mass;
  MotorSpec motor;
  std::optional<Pressure> rating;  ///< of the form; none: no head is too high
  Length knit_depth = millimetres(150.0);
  Length deepest_lift = millimetres(500.0);
};

enum class Leapfrog {
  ahead,   ///< the next row hangs a whole lift before it is needed
  paused,  ///< fewer motors: they may move in the pause between two lifts
};

struct SizedRow {
  Length z;
  Length low, high;        ///< of its reach, inside the form
  Length pressed;          ///< down to here the concrete presses as liquid while it runs
  std::vector<int> lifts;  ///< it works for, from 1, rising
  Pressure head;           ///< the greatest it brings: at the top of the last of them
  std::size_t set = 0;     ///< which set of motors hangs there
};

struct Sizing {
  std::vector<Length> motors;  ///< their x, on every row
  Length spacing;
  double force_share = 0;      ///< force of a motor over the force its share of the face wants
  std::vector<Length> lifts;   ///< tops
  std::vector<SizedRow> rows;  ///< from the bottom up
  std::size_t sets = 0;        ///< of motors, each enough for one row
  Pressure head;               ///< the greatest of all rows
};

/// The layout with the fewest sets of motors, then rows, then lifts. Input errors for numbers that
/// make no sense (sizes as plan_area; reach 0.1 to 10 m and over half the knitting depth; lifts 50
/// mm to 5 m). Refused: no spacing over 300 mm gives force enough, or no layout keeps the head
/// under the rating.
Result<Sizing> size_rows(const SizingCase& c, Leapfrog leapfrog = Leapfrog::ahead);

}  // namespace rb::trade
