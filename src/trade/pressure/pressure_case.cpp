#include "trade/pressure/pressure_case.h"

#include <algorithm>
#include <array>
#include <utility>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

template <class Enum, std::size_t N>
using Names = std::array<std::pair<Enum, std::string_view>, N>;

constexpr Names<CementClass, 5> kCements{{{CementClass::plain, "plain"},
                                          {CementClass::retarded, "retarded"},
                                          {CementClass::blended, "blended"},
                                          {CementClass::blended_retarded, "blended-retarded"},
                                          {CementClass::high_blend, "high-blend"}}};
constexpr Names<PressureMethod, 3> kMethods{{{PressureMethod::aci347, "aci347"},
                                             {PressureMethod::ciria108, "ciria108"},
                                             {PressureMethod::din18218, "din18218"}}};
constexpr Names<FormShape, 2> kShapes{{{FormShape::wall, "wall"}, {FormShape::column, "column"}}};

template <class Enum, std::size_t N>
std::string_view name_in(const Names<Enum, N>& names, Enum value) {
  const auto found = std::ranges::find(names, value, &std::pair<Enum, std::string_view>::first);
  return found == names.end() ? std::string_view{} : found->second;
}

template <class Enum, std::size_t N>
std::optional<Enum> named_in(const Names<Enum, N>& names, std::string_view text) {
  const auto found = std::ranges::find(names, text, &std::pair<Enum, std::string_view>::second);
  if (found == names.end()) return std::nullopt;
  return found->first;
}

}  // namespace

std::string_view to_text(CementClass cement) {
  return name_in(kCements, cement);
}
std::string_view to_text(PressureMethod method) {
  return name_in(kMethods, method);
}
std::string_view to_text(FormShape shape) {
  return name_in(kShapes, shape);
}

std::optional<CementClass> parse_cement_class(std::string_view text) {
  return named_in(kCements, text);
}
std::optional<PressureMethod> parse_pressure_method(std::string_view text) {
  return named_in(kMethods, text);
}
std::optional<FormShape> parse_form_shape(std::string_view text) {
  return named_in(kShapes, text);
}

std::optional<Error> fault_of(const PressureCase& c) {
  return outside(said("form pressure"),
                 {{said("unit weight"), in_kilonewtons_per_m3(c.unit_weight), 10.0, 45.0, "kN/m3"},
                  {said("form height"), in_metres(c.form_height), 0.01, 50.0, "m"},
                  {said("pour height"), in_metres(c.pour_height), 0.0, 50.0, "m"},
                  {said("concrete temperature"), c.temperature.degrees, 0.0, 50.0, "degC"},
                  {said("slump"), in_millimetres(c.slump), 0.0, 300.0, "mm"}});
}

std::optional<Error> fault_of(Velocity rise) {
  return outside(said("form pressure"), {{said("rate of rise"), in_metres_per_hour(rise), 0.0,
                                          in_metres_per_hour(kFastestRise), "m/h"}});
}

Failed method_does_not_hold(PressureMethod method, Saying what) {
  return fail(Error::Kind::refused, std::string(to_text(method)), std::move(what),
              said("Assume a full liquid head (unit weight x depth of fresh concrete) and ask the "
                   "form designer"));
}

}  // namespace rb::trade
