// Numbers typed with their units: "2.5 m/h", "150 pcf", "59 F". A number without a unit is refused,
// so that nobody is answered in feet who asked in metres.
#pragma once

#include <string>

#include "base/quantity.h"
#include "base/result.h"

namespace rb {

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

}  // namespace rb
