// Numbers typed with their units: "2.5 m/h", "150 pcf", "59 F". A number without a unit is refused,
// so that nobody is answered in feet who asked in metres.
#pragma once

#include <string>

#include "base/quantity.h"
#include "base/result.h"
#include "trade/motors/power.h"

namespace rb {

/// How often something happens.
struct PerHour {
  double times = 0;
};

/// Each names `option` and the units it takes when it refuses.
Result<Length> read_length(const std::string& option, const std::string& text);
Result<Area> read_wire_section(const std::string& option, const std::string& text);
Result<Velocity> read_rise(const std::string& option, const std::string& text);
Result<Pressure> read_pressure(const std::string& option, const std::string& text);
Result<UnitWeight> read_unit_weight(const std::string& option, const std::string& text);
Result<Celsius> read_temperature(const std::string& option, const std::string& text);
Result<Seconds> read_time(const std::string& option, const std::string& text);
Result<Mass> read_mass(const std::string& option, const std::string& text);
Result<Force> read_force(const std::string& option, const std::string& text);
Result<Frequency> read_speed(const std::string& option, const std::string& text);
Result<Current> read_current(const std::string& option, const std::string& text);
Result<Potential> read_volts(const std::string& option, const std::string& text);
Result<Volume> read_volume(const std::string& option, const std::string& text);
Result<MassPerArea> read_mass_per_area(const std::string& option, const std::string& text);
Result<PerHour> read_per_hour(const std::string& option, const std::string& text);
Result<trade::ApparentPower> read_apparent_power(const std::string& option,
                                                 const std::string& text);
/// "80 %", as a share of one.
Result<double> read_share(const std::string& option, const std::string& text);
/// A whole number over 0, without a unit.
Result<int> read_count(const std::string& option, const std::string& text);

}  // namespace rb
