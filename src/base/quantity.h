// Quantities as strong types (Boost.Units underneath), made and read only by named functions, so
// that a bare number never crosses from one room to another without its unit.
#pragma once

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/acceleration.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/frequency.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>
#include <chrono>
#include <compare>

namespace rb {

namespace si = boost::units::si;

using Length = boost::units::quantity<si::length>;
using Area = boost::units::quantity<si::area>;
using Volume = boost::units::quantity<si::volume>;
using Velocity = boost::units::quantity<si::velocity>;  ///< rate of rise
using Acceleration = boost::units::quantity<si::acceleration>;
using Pressure = boost::units::quantity<si::pressure>;
using Force = boost::units::quantity<si::force>;
using Mass = boost::units::quantity<si::mass>;
using Frequency = boost::units::quantity<si::frequency>;
using Current = boost::units::quantity<si::current>;
using Potential = boost::units::quantity<si::electric_potential>;
using ApparentPower = boost::units::quantity<si::power>;  ///< kVA
using Resistance = boost::units::quantity<si::resistance>;
using UnitWeight = boost::units::divide_typeof_helper<Force, Volume>::type;
using MassPerArea = boost::units::divide_typeof_helper<Mass, Area>::type;
using MassPerVolume = boost::units::divide_typeof_helper<Mass, Volume>::type;

/// A length of time. Moments are in moment.h.
using Seconds = std::chrono::duration<double>;

/// A temperature as a point on the Celsius scale (not a difference).
struct Celsius {
  double degrees = 0;
  constexpr Celsius() = default;
  explicit constexpr Celsius(double d) : degrees(d) {}
  // NOLINTNEXTLINE(modernize-use-nullptr): clang-tidy 14 takes the defaulted one for a pointer
  constexpr auto operator<=>(const Celsius&) const = default;
  [[nodiscard]] constexpr double kelvin() const { return degrees + 273.15; }
  [[nodiscard]] constexpr double fahrenheit() const { return degrees * 1.8 + 32.0; }
};
constexpr Celsius celsius(double d) {
  return Celsius{d};
}
constexpr Celsius fahrenheit(double f) {
  return Celsius{(f - 32.0) / 1.8};
}

// Exact by definition: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, g0 = 9.80665 m/s2 (NIST SP 811).
inline constexpr double kFoot = 0.3048;
inline constexpr double kPoundMass = 0.45359237;
inline constexpr double kStandardGravity = 9.80665;
inline constexpr double kPoundForce = kPoundMass * kStandardGravity;
inline constexpr double kPsf = kPoundForce / (kFoot * kFoot);
inline constexpr double kPcf = kPoundForce / (kFoot * kFoot * kFoot);
inline constexpr double kCubicYard = 27.0 * kFoot * kFoot * kFoot;

template <class Quantity>
constexpr Quantity quantity_of(double in_si) {
  return Quantity::from_value(in_si);
}

// SI makers and readers.
constexpr Length metres(double v) {
  return quantity_of<Length>(v);
}
constexpr Length millimetres(double v) {
  return quantity_of<Length>(v / 1000.0);
}
constexpr Area square_metres(double v) {
  return quantity_of<Area>(v);
}
constexpr Volume cubic_metres(double v) {
  return quantity_of<Volume>(v);
}
constexpr Velocity metres_per_hour(double v) {
  return quantity_of<Velocity>(v / 3600.0);
}
constexpr Velocity metres_per_second(double v) {
  return quantity_of<Velocity>(v);
}
constexpr Acceleration metres_per_second2(double v) {
  return quantity_of<Acceleration>(v);
}
constexpr Pressure kilopascals(double v) {
  return quantity_of<Pressure>(v * 1000.0);
}
constexpr Pressure megapascals(double v) {
  return quantity_of<Pressure>(v * 1e6);
}
constexpr UnitWeight kilonewtons_per_m3(double v) {
  return quantity_of<UnitWeight>(v * 1000.0);
}
constexpr Force newtons(double v) {
  return quantity_of<Force>(v);
}
constexpr Force kilonewtons(double v) {
  return quantity_of<Force>(v * 1000.0);
}
constexpr Mass kilograms(double v) {
  return quantity_of<Mass>(v);
}
constexpr MassPerArea kilograms_per_m2(double v) {
  return quantity_of<MassPerArea>(v);
}
constexpr MassPerVolume kilograms_per_m3(double v) {
  return quantity_of<MassPerVolume>(v);
}
constexpr Frequency hertz(double v) {
  return quantity_of<Frequency>(v);
}
constexpr Frequency vibrations_per_minute(double v) {
  return quantity_of<Frequency>(v / 60.0);
}
constexpr Current amperes(double v) {
  return quantity_of<Current>(v);
}
constexpr ApparentPower kilovoltamperes(double v) {
  return quantity_of<ApparentPower>(v * 1000.0);
}
constexpr double in_kilovoltamperes(ApparentPower s) {
  return s.value() / 1000.0;
}
constexpr Potential volts(double v) {
  return quantity_of<Potential>(v);
}
constexpr Resistance ohms(double v) {
  return quantity_of<Resistance>(v);
}

constexpr double in_metres(Length q) {
  return q.value();
}
constexpr double in_millimetres(Length q) {
  return q.value() * 1000.0;
}
constexpr double in_square_metres(Area q) {
  return q.value();
}
constexpr double in_cubic_metres(Volume q) {
  return q.value();
}
constexpr double in_metres_per_hour(Velocity q) {
  return q.value() * 3600.0;
}
constexpr double in_metres_per_second(Velocity q) {
  return q.value();
}
constexpr double in_metres_per_second2(Acceleration q) {
  return q.value();
}
constexpr double in_kilopascals(Pressure q) {
  return q.value() / 1000.0;
}
constexpr double in_megapascals(Pressure q) {
  return q.value() / 1e6;
}
constexpr double in_kilonewtons_per_m3(UnitWeight q) {
  return q.value() / 1000.0;
}
constexpr double in_newtons(Force q) {
  return q.value();
}
constexpr double in_kilonewtons(Force q) {
  return q.value() / 1000.0;
}
constexpr double in_kilograms(Mass q) {
  return q.value();
}
constexpr double in_kilograms_per_m2(MassPerArea q) {
  return q.value();
}
constexpr double in_kilograms_per_m3(MassPerVolume q) {
  return q.value();
}
constexpr double in_hertz(Frequency q) {
  return q.value();
}
constexpr double in_vibrations_per_minute(Frequency q) {
  return q.value() * 60.0;
}
constexpr double in_amperes(Current q) {
  return q.value();
}
constexpr double in_volts(Potential q) {
  return q.value();
}
constexpr double in_ohms(Resistance q) {
  return q.value();
}

// US customary makers and readers, for showing and for input in those units only.
constexpr Length feet(double v) {
  return metres(v * kFoot);
}
constexpr Length inches(double v) {
  return metres(v * kFoot / 12.0);
}
constexpr Velocity feet_per_hour(double v) {
  return metres_per_hour(v * kFoot);
}
constexpr Pressure psf(double v) {
  return quantity_of<Pressure>(v * kPsf);
}
constexpr UnitWeight pcf(double v) {
  return quantity_of<UnitWeight>(v * kPcf);
}
constexpr Force pounds_force(double v) {
  return newtons(v * kPoundForce);
}
constexpr Mass pounds(double v) {
  return kilograms(v * kPoundMass);
}
constexpr Volume cubic_yards(double v) {
  return cubic_metres(v * kCubicYard);
}

constexpr double in_feet(Length q) {
  return q.value() / kFoot;
}
constexpr double in_inches(Length q) {
  return q.value() * 12.0 / kFoot;
}
constexpr double in_feet_per_hour(Velocity q) {
  return in_metres_per_hour(q) / kFoot;
}
constexpr double in_psf(Pressure q) {
  return q.value() / kPsf;
}
constexpr double in_pcf(UnitWeight q) {
  return q.value() / kPcf;
}
constexpr double in_pounds_force(Force q) {
  return q.value() / kPoundForce;
}
constexpr double in_pounds(Mass q) {
  return q.value() / kPoundMass;
}
constexpr double in_cubic_yards(Volume q) {
  return q.value() / kCubicYard;
}

constexpr Seconds seconds(double v) {
  return Seconds{v};
}
constexpr Seconds hours(double v) {
  return Seconds{v * 3600.0};
}
constexpr double in_seconds(Seconds s) {
  return s.count();
}
constexpr double in_minutes(Seconds q) {
  return q.count() / 60.0;
}
constexpr double in_hours(Seconds s) {
  return s.count() / 3600.0;
}

/// The rate at which a height is gained over a length of time (which must not be zero).
constexpr Velocity rate(Length gained, Seconds over) {
  return quantity_of<Velocity>(gained.value() / over.count());
}

}  // namespace rb
