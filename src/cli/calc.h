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

/// The rate of rise a form's rating allows.
struct RiseWish {
  PressureWish form;              ///< its rise is not asked for
  std::string length, thickness;  ///< empty: the rate of placing is not asked for
};
Exit calc_rise(const RiseWish& wish);

/// How long a row must rest before it runs again under a head the form does not bear, for concrete
/// that rose evenly.
struct WaitWish {
  std::string placed, rise, low, high, rating;
  std::string unit_weight = "25 kN/m3", initial_set, reference = "20 C", temperature = "20 C";
  std::string since = "0 min";  ///< since the last of it came
};
Exit calc_wait(const WaitWish& wish);

struct SizeWish {
  std::string length, height, thickness, rating;  ///< rating empty: no head is too high
  std::string unit_weight = "25 kN/m3", form_mass = "60 kg/m2";
  std::string force, reach_x = "600 mm", reach_z = "600 mm", reach_pressure, lift = "500 mm";
};
Exit calc_size(const SizeWish& wish);

struct SetWish {
  std::string initial_set, reference = "20 C", temperature;
  std::string history;  ///< "0 h 18 C, 3 h 24 C"; empty: the one temperature throughout
  std::string q{};      ///< Ea/R of the mix in kelvin; empty: not known
};
Exit calc_set(const SetWish& wish);

/// How long the pause between two lifts may be before the joint sets.
struct KnitWish {
  SetWish set;
  std::string lift, rise, run = "105 s", rows = "1";
};
Exit calc_knit(const KnitWish& wish);

struct ForceWish {
  std::string eccentric, radius, speed;
  std::string form, concrete;  ///< masses in reach; empty: not asked for
};
Exit calc_force(const ForceWish& wish);

struct VoltsWish {
  std::string volts = "42 V", amps, section{}, length{}, speed = "6000 vpm";
  /// A trunk before the motor's own cord, and how many motors are on it at once.
  std::string trunk_section{}, trunk_length{}, motors = "1";
};
Exit calc_volts(const VoltsWish& wish);

struct AmpsWish {
  std::string motors, amps, inverter, volts = "42 V";
  std::string generator;        ///< its rating; empty: not asked for
  std::string inverters = "1";  ///< alike, on that generator
  std::string derate = "80 %";  ///< of its rating it gives on the site
};
Exit calc_amps(const AmpsWish& wish);

}  // namespace rb
