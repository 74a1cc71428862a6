#include "record/measure.h"

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
};
struct Row {
  Measure measure;
  const char* suffix;
  Face si, us;
};

constexpr double kPerFoot = 1.0 / kFoot;
constexpr double kPerInch = 12.0 / kFoot;

// In the order of the enumeration.
constexpr std::array<Row, 23> kRows{{
    {Measure::text, "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::yes_no, "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::moment, "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::count, "", {"", 1, 0, 0}, {"", 1, 0, 0}},
    {Measure::number, "", {"", 1, 0, 3}, {"", 1, 0, 3}},
    {Measure::span, "_s", {"s", 1, 0, 0}, {"s", 1, 0, 0}},
    {Measure::age, "_s", {"min", 1.0 / 60, 0, 0}, {"min", 1.0 / 60, 0, 0}},
    {Measure::long_span, "_s", {"h", 1.0 / 3600, 0, 1}, {"h", 1.0 / 3600, 0, 1}},
    {Measure::length, "_m", {"m", 1, 0, 2}, {"ft", kPerFoot, 0, 2}},
    {Measure::small_length, "_m", {"mm", 1000, 0, 0}, {"in", kPerInch, 0, 1}},
    {Measure::volume, "_m3", {"m³", 1, 0, 2}, {"yd³", 1.0 / kCubicYard, 0, 2}},
    {Measure::rate, "_mh", {"m/h", 1, 0, 2}, {"ft/h", kPerFoot, 0, 2}},
    {Measure::pressure, "_kpa", {"kPa", 1, 0, 1}, {"psf", 1000.0 / kPsf, 0, 0}},
    {Measure::unit_weight, "_kn_m3", {"kN/m³", 1, 0, 1}, {"lb/ft³", 1000.0 / kPcf, 0, 0}},
    {Measure::density,
     "_kg_m3",
     {"kg/m³", 1, 0, 0},
     {"lb/ft³", kFoot* kFoot* kFoot / kPoundMass, 0, 1}},
    {Measure::mass_per_area,
     "_kg_m2",
     {"kg/m²", 1, 0, 0},
     {"lb/ft²", kFoot* kFoot / kPoundMass, 0, 1}},
    {Measure::temperature, "_degc", {"°C", 1, 0, 1}, {"°F", 1.8, 32, 1}},
    {Measure::speed, "_vpm", {"vpm", 1, 0, 0}, {"vpm", 1, 0, 0}},
    {Measure::share, "", {"%", 100, 0, 1}, {"%", 100, 0, 1}},
    {Measure::percent, "_percent", {"%", 1, 0, 1}, {"%", 1, 0, 1}},
    {Measure::angle, "_deg", {"°", 1, 0, 1}, {"°", 1, 0, 1}},
    {Measure::current, "_a", {"A", 1, 0, 1}, {"A", 1, 0, 1}},
    {Measure::potential, "_v", {"V", 1, 0, 1}, {"V", 1, 0, 1}},
}};

const Row& row(Measure measure) {
  return kRows[static_cast<std::size_t>(measure)];
}

const Face& face(Measure measure, Units units) {
  return units == Units::us ? row(measure).us : row(measure).si;
}

constexpr std::array<std::pair<std::string_view, Measure>, 16> kUnits{{
    {"1", Measure::share},
    {"s", Measure::span},
    {"m", Measure::length},
    {"m3", Measure::volume},
    {"m/h", Measure::rate},
    {"kPa", Measure::pressure},
    {"kN/m3", Measure::unit_weight},
    {"kg/m3", Measure::density},
    {"kg/m2", Measure::mass_per_area},
    {"degC", Measure::temperature},
    {"vpm", Measure::speed},
    {"%", Measure::percent},
    {"deg", Measure::angle},
    {"A", Measure::current},
    {"V", Measure::potential},
    {"", Measure::number},
}};

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

std::string shown_text(double si, Measure measure, Units units) {
  const double value = shown(si, measure, units);
  if (!std::isfinite(value)) return "?";
  std::string text = fmt::format("{:.{}f}", value, decimals(measure, units));
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) {
    text.erase(0, 1);
  }
  return text;
}

Measure measure_of_unit(std::string_view unit) {
  for (const auto& [text, measure] : kUnits) {
    if (text == unit) return measure;
  }
  return Measure::text;
}

std::string finding_number(double value, const std::string& unit, Units units) {
  const Measure measure = measure_of_unit(unit);
  if (measure == Measure::text) return fmt::format("{:.6g} {}", value, unit);
  if (measure == Measure::number) return fmt::format("{:.6g}", value);
  // A no-break space: a number does not part from its unit.
  return fmt::format("{}\u00A0{}", shown_text(value, measure, units), unit_text(measure, units));
}

}  // namespace rb
