// What comes after the last lift: curing, the temperature of the hardening concrete, leave to
// strip, specimens. May be logged after the close.
#pragma once

#include <optional>
#include <string>
#include <tuple>

#include "pour/log/kinds_placing.h"

namespace rb {

namespace event {

struct CureStart {
  ElementId element;
  std::string how;  ///< "wet burlap", "curing compound", "form left on"
  static constexpr const char* kWord = "cure-start";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &CureStart::element},
                      Field{"how", &CureStart::how, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return how.empty() ? said("Curing begun") : said("Curing begun: {how}");
  }
  bool operator==(const CureStart&) const = default;
};
struct CureEnd {
  ElementId element;
  std::string how;
  static constexpr const char* kWord = "cure-end";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &CureEnd::element},
                      Field{"how", &CureEnd::how, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return how.empty() ? said("Curing ended") : said("Curing ended: {how}");
  }
  bool operator==(const CureEnd&) const = default;
};
/// Of the hardening concrete, where it was read: a probe of its own for each place.
struct ConcreteTemp {
  ElementId element;
  Celsius temp;
  std::optional<Length> z, x;
  static constexpr const char* kWord = "concrete-temp";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &ConcreteTemp::element},
                      Field{"temp", &ConcreteTemp::temp, {-40, 100, "degC"}},
                      Field{"z", &ConcreteTemp::z, kHeights},
                      Field{"x", &ConcreteTemp::x, kPositions}};
  }
  [[nodiscard]] const char* says() const { return said("Concrete at {temp}"); }
  bool operator==(const ConcreteTemp&) const = default;
};
/// Leave to strip, given by whoever logs it. It clears nothing: it stands beside what is found.
struct PermitStrip {
  ElementId element;
  std::optional<Side> side;  ///< none: both
  std::string why;
  static constexpr const char* kWord = "permit-strip";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &PermitStrip::element}, Field{"side", &PermitStrip::side},
                      Field{"why", &PermitStrip::why}};
  }
  [[nodiscard]] const char* says() const { return said("Leave to strip: {why}"); }
  bool operator==(const PermitStrip&) const = default;
};
/// A specimen broken: it belongs to the load whose test took it. A script may name it by `id`.
struct Specimen {
  SpecimenId specimen;
  double age_days = 0;
  Pressure strength;
  static constexpr const char* kWord = "specimen";
  static constexpr auto fields() {
    return std::tuple{Field{"specimen", &Specimen::specimen, {}, Need::may},
                      Field{"age_days", &Specimen::age_days, {0, 3650, "d", true}},
                      Field{"strength_mpa", &Specimen::strength, {0, 300, "MPa"}}};
  }
  [[nodiscard]] const char* says() const { return said("Specimen {specimen}: {strength_mpa}"); }
  bool operator==(const Specimen&) const = default;
};

using AfterKinds = std::tuple<CureStart, CureEnd, ConcreteTemp, PermitStrip, Specimen>;

}  // namespace event

}  // namespace rb
