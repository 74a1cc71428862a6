// How quantities are shown: each measure's unit, factor and decimals, SI and US. A number in a cell
// of the record stands in the measure's SI unit as the pour script writes it (m, s, m3, kPa, m/h,
// kN/m3, degC, vpm).
#pragma once

#include <string>
#include <string_view>

#include "pour/plan.h"

namespace rb {

enum class Measure {
  text,
  yes_no,
  moment,
  count,
  number,        ///< unit told beside it
  span,          ///< seconds, shown in seconds
  age,           ///< seconds, shown in minutes
  long_span,     ///< seconds, shown in hours
  length,        ///< m or ft
  small_length,  ///< metres, shown in mm or in
  volume,
  rate,
  pressure,
  unit_weight,
  density,
  mass_per_area,
  temperature,
  speed,
  share,    ///< of one, shown in per cent
  percent,  ///< per cent already
  angle,
  current,
  potential,
};

/// "m", "ft", "" for what has no unit.
const char* unit_text(Measure measure, Units units);
/// The end of a column's name in CSV and JSON: "_m", "_kpa", "" where there is no unit.
const char* key_suffix(Measure measure);
int decimals(Measure measure, Units units);
/// The number in the shown unit.
double shown(double si, Measure measure, Units units);
/// The same as text, without its unit; "-0.0" is never said.
std::string shown_text(double si, Measure measure, Units units);

/// The measure a finding's unit ("s", "kPa", "m/h", "1") stands for; text for one not known.
Measure measure_of_unit(std::string_view unit);
/// A finding's number with its unit: "62 s", "1.9 %". An unknown unit is shown as it is.
std::string finding_number(double value, const std::string& unit, Units units);

}  // namespace rb
