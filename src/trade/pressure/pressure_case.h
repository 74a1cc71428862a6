// What every method of form pressure is asked with. The pressure asked for is the greatest lateral
// pressure on the form, a characteristic value without any safety factor.
#pragma once

#include <optional>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

/// How slowly the binder sets, as the methods sort it: portland cement alone (plain), with anything
/// that delays setting (retarded: a superplasticizer that does so counts), with under 70 % slag or
/// 40 % fly ash (blended), with more (high blend).
enum class CementClass { plain, retarded, blended, blended_retarded, high_blend };

enum class PressureMethod { aci347, ciria108, din18218 };

/// A column is up to 2 m both ways in plan (CIRIA 108 and ACI 347 agree). The caller decides.
enum class FormShape { wall, column };

/// "plain|retarded|blended|blended-retarded|high-blend", "aci347|ciria108|din18218", "wall|column".
std::string_view to_text(CementClass cement);
std::string_view to_text(PressureMethod method);
std::string_view to_text(FormShape shape);
/// Nothing on any other text.
std::optional<CementClass> parse_cement_class(std::string_view text);
std::optional<PressureMethod> parse_pressure_method(std::string_view text);
std::optional<FormShape> parse_form_shape(std::string_view text);

struct PressureCase {
  FormShape shape = FormShape::wall;
  UnitWeight unit_weight = kilonewtons_per_m3(25.0);
  Length form_height = metres(0.0);  ///< the whole form; a deeper pour counts as the form's height
  Length pour_height = metres(0.0);  ///< depth of fresh concrete placed in one go
  Celsius temperature{20.0};         ///< of the concrete, not of the air
  Length slump = millimetres(100.0);
  CementClass cement = CementClass::plain;
  Seconds set_time = hours(5.0);    ///< initial set at that temperature; DIN 18218 alone uses it
  bool external_vibration = false;  ///< changes no figure: see pressure.h, vibration_caution
};

/// Nothing if the case makes sense; else an input error. Bounds (our own choice): unit weight 10 to
/// 45 kN/m3, form height over 0 to 50 m, pour height 0 to 50 m, concrete 0 to 50 degC, slump 0 to
/// 300 mm (the height of the cone). The set time is judged by the method that uses it.
std::optional<Error> fault_of(const PressureCase& c);

/// The same for a rate of rise: 0 to 3600 m/h (our own choice).
std::optional<Error> fault_of(Velocity rise);
inline constexpr Velocity kFastestRise = metres_per_hour(3600.0);

/// Unit weight x depth: what the form bears while the whole depth is liquid.
constexpr Pressure full_liquid_head(UnitWeight unit_weight, Length depth) {
  return unit_weight * depth;
}

/// The depth below the top of the concrete at which a liquid head reaches a pressure.
constexpr Length liquid_depth(UnitWeight unit_weight, Pressure pressure) {
  return pressure / unit_weight;
}

/// How every method refuses: what does not hold, and that a full liquid head is to be assumed.
Failed method_does_not_hold(PressureMethod method, Saying what);

}  // namespace rb::trade
