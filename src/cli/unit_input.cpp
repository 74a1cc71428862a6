#include "cli/unit_input.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <span>
#include <string_view>

namespace rb {

namespace {

template <class Quantity>
struct Unit {
  std::string_view name;
  Quantity (*make)(double);
};

UnitWeight of_density(double kg_m3) {
  return kilonewtons_per_m3(kg_m3 * kStandardGravity / 1000.0);
}
Length centimetres(double v) {
  return metres(v / 100.0);
}
Area square_millimetres_of(double v) {
  return square_metres(v * 1e-6);
}
Pressure pounds_per_in2(double v) {
  return psf(v * 144.0);
}
Seconds minutes(double v) {
  return seconds(v * 60.0);
}
Volume litres(double v) {
  return cubic_metres(v / 1000.0);
}
MassPerArea pounds_per_ft2(double v) {
  return kilograms_per_m2(v * kPoundMass / (kFoot * kFoot));
}
PerHour per_hour(double v) {
  return {v};
}
Mass grams(double v) {
  return kilograms(v / 1000.0);
}

constexpr Unit<Length> kLengths[] = {
    {"m", metres}, {"mm", millimetres}, {"cm", centimetres}, {"ft", feet}, {"in", inches}};
constexpr Unit<Area> kSections[] = {{"mm2", square_millimetres_of}};
constexpr Unit<Volume> kVolumes[] = {{"m3", cubic_metres}, {"L", litres}, {"yd3", cubic_yards}};
constexpr Unit<MassPerArea> kMassesPerArea[] = {{"kg/m2", kilograms_per_m2},
                                                {"lb/ft2", pounds_per_ft2}};
constexpr Unit<PerHour> kPerHour[] = {{"/h", per_hour}};
constexpr Unit<trade::ApparentPower> kPowers[] = {{"kVA", trade::kilovoltamperes}};
constexpr Unit<Velocity> kRises[] = {{"m/h", metres_per_hour}, {"ft/h", feet_per_hour}};
constexpr Unit<Pressure> kPressures[] = {
    {"kPa", kilopascals}, {"kN/m2", kilopascals}, {"psf", psf}, {"psi", pounds_per_in2}};
constexpr Unit<UnitWeight> kUnitWeights[] = {
    {"kN/m3", kilonewtons_per_m3}, {"kg/m3", of_density}, {"pcf", pcf}};
constexpr Unit<Celsius> kTemperatures[] = {
    {"C", celsius}, {"degC", celsius}, {"F", fahrenheit}, {"degF", fahrenheit}};
constexpr Unit<Seconds> kTimes[] = {{"s", seconds}, {"min", minutes}, {"h", hours}};
constexpr Unit<Mass> kMasses[] = {{"kg", kilograms}, {"g", grams}, {"lb", pounds}};
constexpr Unit<Force> kForces[] = {{"N", newtons}, {"kN", kilonewtons}, {"lbf", pounds_force}};
constexpr Unit<Frequency> kSpeeds[] = {{"vpm", vibrations_per_minute}, {"Hz", hertz}};
constexpr Unit<Current> kCurrents[] = {{"A", amperes}};
constexpr Unit<Potential> kVolts[] = {{"V", volts}};

double hundredths(double v) {
  return v / 100.0;
}
constexpr Unit<double> kShares[] = {{"%", hundredths}};

template <class Quantity>
Result<Quantity> read(const std::string& option, const std::string& text,
                      std::span<const Unit<Quantity>> units) {
  std::string known;
  for (const auto& unit : units) known += (known.empty() ? "" : ", ") + std::string{unit.name};
  const auto refuse = [&](Said what) {
    return fail(Error::Kind::input, option,
                {said("is \"{given}\": {fault}"), {{"given", text}, {"fault", Term{what}}}},
                {said("Give a number and a unit of {units}"), {{"units", known}}});
  };
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [rest, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || !std::isfinite(value)) return refuse(said("no number"));
  std::string_view name{rest, static_cast<std::size_t>(end - rest)};
  while (!name.empty() && name.front() == ' ') name.remove_prefix(1);
  if (name.empty()) return refuse(said("no unit"));
  for (const auto& unit : units) {
    if (unit.name == name) return unit.make(value);
  }
  return refuse(said("a unit that is not known here"));
}

}  // namespace

Result<Length> read_length(const std::string& option, const std::string& text) {
  return read<Length>(option, text, kLengths);
}
Result<Area> read_wire_section(const std::string& option, const std::string& text) {
  return read<Area>(option, text, kSections);
}
Result<Velocity> read_rise(const std::string& option, const std::string& text) {
  return read<Velocity>(option, text, kRises);
}
Result<Pressure> read_pressure(const std::string& option, const std::string& text) {
  return read<Pressure>(option, text, kPressures);
}
Result<UnitWeight> read_unit_weight(const std::string& option, const std::string& text) {
  return read<UnitWeight>(option, text, kUnitWeights);
}
Result<Celsius> read_temperature(const std::string& option, const std::string& text) {
  return read<Celsius>(option, text, kTemperatures);
}
Result<Seconds> read_time(const std::string& option, const std::string& text) {
  return read<Seconds>(option, text, kTimes);
}
Result<Mass> read_mass(const std::string& option, const std::string& text) {
  return read<Mass>(option, text, kMasses);
}
Result<Force> read_force(const std::string& option, const std::string& text) {
  return read<Force>(option, text, kForces);
}
Result<Frequency> read_speed(const std::string& option, const std::string& text) {
  return read<Frequency>(option, text, kSpeeds);
}
Result<Current> read_current(const std::string& option, const std::string& text) {
  return read<Current>(option, text, kCurrents);
}
Result<Potential> read_volts(const std::string& option, const std::string& text) {
  return read<Potential>(option, text, kVolts);
}

Result<Volume> read_volume(const std::string& option, const std::string& text) {
  return read<Volume>(option, text, kVolumes);
}
Result<MassPerArea> read_mass_per_area(const std::string& option, const std::string& text) {
  return read<MassPerArea>(option, text, kMassesPerArea);
}
Result<PerHour> read_per_hour(const std::string& option, const std::string& text) {
  return read<PerHour>(option, text, kPerHour);
}
Result<trade::ApparentPower> read_apparent_power(const std::string& option,
                                                 const std::string& text) {
  return read<trade::ApparentPower>(option, text, kPowers);
}

Result<double> read_share(const std::string& option, const std::string& text) {
  return read<double>(option, text, kShares);
}

Result<int> read_count(const std::string& option, const std::string& text) {
  int value = 0;
  const char* end = text.data() + text.size();
  const auto [rest, error] = std::from_chars(text.data(), end, value);
  if (error == std::errc{} && rest == end && value > 0) return value;
  return fail(Error::Kind::input, option, {said("is \"{given}\""), {{"given", text}}},
              said("Give a whole number over 0"));
}

}  // namespace rb
