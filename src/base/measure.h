// The one table of what is measured: each measure's unit in SI and in US customary units, factor,
// offset and decimals. A figure in a file, a book or a cell of the record stands in the measure's
// script unit (m, s, m3, kPa, m/h, kN/m3, degC, vpm, 1 for a share).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.h"

namespace rb {

/// Units in which figures are shown; inside everything is SI.
enum class Units { si, us };

enum class Measure {
  text,
  yes_no,
  moment,
  count,
  number,        ///< unit told beside it
  span,          ///< seconds, shown in seconds
  age,           ///< seconds, shown in minutes
  long_span,     ///< seconds, shown in hours
  any_span,      ///< seconds, shown in what reads best: "45 s", "12 min", "2 h 5 min", "3 d 4 h"
  length,        ///< m or ft
  small_length,  ///< metres, shown in mm or in
  volume,
  rate,
  pressure,
  unit_weight,
  density,
  mass_per_area,
  temperature,
  kelvin,  ///< a difference, or Q of the rate of setting
  speed,
  share,    ///< of one, shown in per cent
  percent,  ///< per cent already
  angle,
  current,
  potential,
  apparent_power,  ///< kVA
  force,           ///< kN or lbf
  wire_section,    ///< mm2 everywhere: wire is sold so
  per_hour,
  factor,       ///< a bare number with one decimal
  strength,     ///< of concrete: MPa or psi
  evaporation,  ///< kg/m2/h or lb/ft2/h
  wind,         ///< m/s or mph
  placing,      ///< of concrete: m3/h or yd3/h
  area,         ///< m2 or ft2
};

/// How the last decimal is made: a limit is rounded so that nothing over it looks within it, what
/// was measured so that it never looks better than it was.
enum class Rounding { nearest, down, up };

/// "m", "ft", "m\u00B3", "\u00B0C"; "" for what has no unit.
const char* unit_text(Measure measure, Units units);
/// The unit as a pour script and JSON write it: "m", "m3", "degC", "1"; "" for what has none.
const char* script_unit(Measure measure);
/// The measure a script unit stands for; of several the one shown as it is written. None: unknown.
std::optional<Measure> measure_of_unit(std::string_view unit);
/// The end of a column's name in CSV and JSON: "_m", "_kpa", "" where there is no unit.
const char* key_suffix(Measure measure);
int decimals(Measure measure, Units units);
/// The number in the shown unit.
double shown(double si, Measure measure, Units units);
/// Back from what was typed in the shown unit, to twelve figures: no tail of digits is kept.
double from_shown(double shown, Measure measure, Units units);
/// What one touch on + or - adds, in the shown unit.
double entry_step(Measure measure, Units units);
/// The same as text, without its unit; "-0.0" is never said.
std::string shown_text(double si, Measure measure, Units units,
                       Rounding rounding = Rounding::nearest);

/// A figure as somebody typed it, no digits added: "60", "1.5", "0.25".
std::string entry_text(double si, Measure measure, Units units);

/// A quantity carried as data: what it measures, and how much in the measure's script unit.
struct Amount {
  Measure measure = Measure::number;
  double si = 0;
  bool operator==(const Amount&) const = default;
};

constexpr Amount amount(Length q) {
  return {Measure::length, in_metres(q)};
}
constexpr Amount amount(Area q) {
  return {Measure::area, in_square_metres(q)};
}
constexpr Amount amount(Volume q) {
  return {Measure::volume, in_cubic_metres(q)};
}
constexpr Amount amount(Velocity q) {
  return {Measure::rate, in_metres_per_hour(q)};
}
constexpr Amount amount(Pressure q) {
  return {Measure::pressure, in_kilopascals(q)};
}
constexpr Amount amount(UnitWeight q) {
  return {Measure::unit_weight, in_kilonewtons_per_m3(q)};
}
constexpr Amount amount(MassPerVolume q) {
  return {Measure::density, in_kilograms_per_m3(q)};
}
constexpr Amount amount(MassPerArea q) {
  return {Measure::mass_per_area, in_kilograms_per_m2(q)};
}
constexpr Amount amount(Frequency q) {
  return {Measure::speed, in_vibrations_per_minute(q)};
}
constexpr Amount amount(Current q) {
  return {Measure::current, in_amperes(q)};
}
constexpr Amount amount(Potential q) {
  return {Measure::potential, in_volts(q)};
}
constexpr Amount amount(ApparentPower q) {
  return {Measure::apparent_power, in_kilovoltamperes(q)};
}
constexpr Amount amount(Force q) {
  return {Measure::force, in_kilonewtons(q)};
}
constexpr Amount amount(Celsius t) {
  return {Measure::temperature, t.degrees};
}
/// Seconds; shown in seconds, minutes (Measure::age) or hours (Measure::long_span).
constexpr Amount amount(Seconds s, Measure shown_as = Measure::span) {
  return {shown_as, in_seconds(s)};
}
constexpr Amount share(double of_one) {
  return {Measure::share, of_one};
}
constexpr Amount count(double how_many) {
  return {Measure::count, how_many};
}

constexpr Amount counted(std::size_t how_many) {
  return count(static_cast<double>(how_many));
}

/// "62 s", "1.9 %", "10.0 ft": a number does not part from its unit (a no-break space).
std::string amount_text(const Amount& figure, Units units, Rounding rounding = Rounding::nearest);

}  // namespace rb
