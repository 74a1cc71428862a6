// `calc`: single formulas of the engineering on the command line, SI and US on every answer.
#pragma once

#include <string>

#include "app/outcome.h"

namespace rb {

struct PressureWish {
  std::string method = "aci347", shape = "wall", cement = "plain";
  std::string unit_weight = "24 kN/m3", height, rise, temperature = "20 C", slump = "100 mm";
  std::string set_time = "5 h";
  std::string rating;  ///< empty: not asked for
};
Exit calc_pressure(const PressureWish& wish);

struct SetWish {
  std::string initial_set, reference = "20 C", temperature;
};
Exit calc_set(const SetWish& wish);

struct ForceWish {
  std::string eccentric, radius, speed;
  std::string form, concrete;  ///< masses in reach; empty: not asked for
};
Exit calc_force(const ForceWish& wish);

struct VoltsWish {
  std::string volts = "42 V", amps, section, length, speed = "6000 vpm";
};
Exit calc_volts(const VoltsWish& wish);

}  // namespace rb
