#include "base/measure.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace rb {

namespace {

struct Face {
  const char* unit;
  double factor;
  double plus;
  int decimals;
  double step = 1;  ///< of a pad's + and -
};
struct Row {
  Measure measure;
  const char* suffix;
  const char* script;
  Face si, us;
};

constexpr double kPerFoot = 1.0 / kFoot;
constexpr double kPerInch = 12.0 / kFoot;

// In the order of the enumeration.
constexpr std::array<Row, 35> kRows{{
    {Measure::text, "", "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::yes_no, "", "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::moment, "", "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::count, "", "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::number, "", "", {"", 1, 0, 3}, {"", 1, 0, 3}},
    {Measure::span, "_s", "s", {"s", 1, 0, 0}, {"s", 1, 0, 0}},
    {Measure::age, "_s", "s", {"min", 1.0 / 60, 0, 0}, {"min", 1.0 / 60, 0, 0}},
    {Measure::long_span, "_s", "s", {"h", 1.0 / 3600, 0, 1}, {"h", 1.0 / 3600, 0, 1}},
    {Measure::any_span, "_s", "s", {"s", 1, 0, 0}, {"s", 1, 0, 0}},
    {Measure::length, "_m", "m", {"m", 1, 0, 2}, {"ft", kPerFoot, 0, 2}},
    {Measure::small_length, "_m", "m", {"mm", 1000, 0, 0, 10}, {"in", kPerInch, 0, 2, 0.25}},
    {Measure::volume, "_m3", "m3", {"m³", 1, 0, 2, 0.5}, {"yd³", 1.0 / kCubicYard, 0, 2, 0.5}},
    {Measure::rate, "_mh", "m/h", {"m/h", 1, 0, 2}, {"ft/h", kPerFoot, 0, 2}},
    {Measure::pressure, "_kpa", "kPa", {"kPa", 1, 0, 1}, {"psf", 1000.0 / kPsf, 0, 0}},
    {Measure::unit_weight, "_kn_m3", "kN/m3", {"kN/m³", 1, 0, 1}, {"lb/ft³", 1000.0 / kPcf, 0, 0}},
    {Measure::density,
     "_kg_m3",
     "kg/m3",
     {"kg/m³", 1, 0, 0, 10},
     {"lb/ft³", kFoot* kFoot* kFoot / kPoundMass, 0, 1, 0.5}},
    {Measure::mass_per_area,
     "_kg_m2",
     "kg/m2",
     {"kg/m²", 1, 0, 0},
     {"lb/ft²", kFoot* kFoot / kPoundMass, 0, 1}},
    {Measure::temperature, "_degc", "degC", {"°C", 1, 0, 1, 0.5}, {"°F", 1.8, 32, 1, 1}},
    {Measure::kelvin, "_k", "K", {"K", 1, 0, 0}, {"K", 1, 0, 0}},
    {Measure::speed, "_vpm", "vpm", {"vpm", 1, 0, 0}, {"vpm", 1, 0, 0}},
    {Measure::share, "", "1", {"%", 100, 0, 1}, {"%", 100, 0, 1}},
    {Measure::percent, "_percent", "%", {"%", 1, 0, 1, 0.1}, {"%", 1, 0, 1, 0.1}},
    {Measure::angle, "_deg", "deg", {"°", 1, 0, 1}, {"°", 1, 0, 1}},
    {Measure::current, "_a", "A", {"A", 1, 0, 1}, {"A", 1, 0, 1}},
    {Measure::potential, "_v", "V", {"V", 1, 0, 1}, {"V", 1, 0, 1}},
    {Measure::apparent_power, "_kva", "kVA", {"kVA", 1, 0, 1}, {"kVA", 1, 0, 1}},
    {Measure::force, "_kn", "kN", {"kN", 1, 0, 1, 0.5}, {"lbf", 1000.0 / kPoundForce, 0, 0, 100}},
    {Measure::wire_section, "_mm2", "mm2", {"mm²", 1, 0, 1, 0.5}, {"mm²", 1, 0, 1, 0.5}},
    {Measure::per_hour, "_h", "/h", {"/h", 1, 0, 1, 0.5}, {"/h", 1, 0, 1, 0.5}},
    {Measure::factor, "", "", {"", 1, 0, 1, 0.1}, {"", 1, 0, 1, 0.1}},
    {Measure::strength, "_mpa", "MPa", {"MPa", 1, 0, 1, 0.5}, {"psi", 1e6 / kPsf / 144, 0, 0, 50}},
    {Measure::evaporation,
     "_kg_m2_h",
     "kg/m2/h",
     {"kg/m²/h", 1, 0, 2, 0.1},
     {"lb/ft²/h", kFoot* kFoot / kPoundMass, 0, 2, 0.05}},
    {Measure::wind, "_m_s", "m/s", {"m/s", 1, 0, 1, 0.5}, {"mph", 3600 / (5280 * kFoot), 0, 1}},
    {Measure::placing, "_m3_h", "m3/h", {"m³/h", 1, 0, 1, 0.5}, {"yd³/h", 1.0 / kCubicYard, 0, 1}},
    {Measure::area, "_m2", "m2", {"m²", 1, 0, 2}, {"ft²", kPerFoot* kPerFoot, 0, 1}},
}};

const Row& row(Measure measure) {
  return kRows[static_cast<std::size_t>(measure)];
}

const Face& face(Measure measure, Units units) {
  return units == Units::us ? row(measure).us : row(measure).si;
}

std::string any_span_text(double seconds) {
  if (std::abs(seconds) < 120) return fmt::format("{:.0f}\u00A0s", seconds);
  const long minutes = std::lround(std::abs(seconds) / 60);
  const char* sign = seconds < 0 ? "-" : "";
  if (minutes < 60) return fmt::format("{}{}\u00A0min", sign, minutes);
  if (minutes < 48L * 60)
    return fmt::format("{}{}\u00A0h {}\u00A0min", sign, minutes / 60, minutes % 60);
  return fmt::format("{}{}\u00A0d {}\u00A0h", sign, minutes / 1440, minutes / 60 % 24);
}

}  // namespace

const char* unit_text(Measure measure, Units units) {
  return face(measure, units).unit;
}

const char* key_suffix(Measure measure) {
  return row(measure).suffix;
}

int decimals(Measure measure, Units units) {
  return face(measure, units).decimals;
}

double shown(double si, Measure measure, Units units) {
  const Face& f = face(measure, units);
  return si * f.factor + f.plus;
}

double from_shown(double value, Measure measure, Units units) {
  const Face& f = face(measure, units);
  const double si = (value - f.plus) / f.factor;
  if (si == 0 || !std::isfinite(si)) return si;
  constexpr int kFigures = 12;
  const double scale = std::pow(10.0, kFigures - 1 - std::floor(std::log10(std::abs(si))));
  return std::round(si * scale) / scale;
}

double entry_step(Measure measure, Units units) {
  return face(measure, units).step;
}

std::string shown_text(double si, Measure measure, Units units, Rounding rounding) {
  double value = shown(si, measure, units);
  if (!std::isfinite(value)) return "?";
  const int places = decimals(measure, units);
  // What is a whole step but for the rounding of a sum stays where it is.
  constexpr double kSumRounding = 1e-6;
  const double step = std::pow(10.0, places);
  if (rounding == Rounding::down) value = std::floor(value * step + kSumRounding) / step;
  if (rounding == Rounding::up) value = std::ceil(value * step - kSumRounding) / step;
  // A tie goes away from zero, one that binary figures miss by a hair too, as in a spreadsheet:
  // the record's workbook is to show what its paper shows.
  constexpr double kHair = 4e-15;
  value += value * kHair;
  std::string text = fmt::format("{:.{}f}", value, places);
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) {
    text.erase(0, 1);
  }
  return text;
}

std::string entry_text(double si, Measure measure, Units units) {
  std::string text = shown_text(si, measure, units);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

const char* script_unit(Measure measure) {
  return row(measure).script;
}

std::optional<Measure> measure_of_unit(std::string_view unit) {
  if (unit.empty()) return Measure::number;
  for (const Row& row : kRows) {
    if (row.script == unit) return row.measure;
  }
  return std::nullopt;
}

std::string amount_text(const Amount& figure, Units units, Rounding rounding) {
  if (figure.measure == Measure::number) return fmt::format("{:.6g}", figure.si);
  if (figure.measure == Measure::any_span) return any_span_text(figure.si);
  const std::string number = shown_text(figure.si, figure.measure, units, rounding);
  const char* unit = unit_text(figure.measure, units);
  return *unit == '\0' ? number : fmt::format("{}\u00A0{}", number, unit);
}

}  // namespace rb
