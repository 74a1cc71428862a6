// What concrete comes and what is known of it: trucks, discharges, tests, joints.
#pragma once

#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "base/moment.h"
#include "pour/log/kinds_placing.h"

namespace rb {

namespace event {

struct Truck {
  TicketId ticket;
  MixId mix;
  Volume volume;
  Moment batched, arrived;
  std::optional<Volume> water_added{};  ///< to the truck, on site
  std::optional<Volume> returned{};     ///< went back to the plant
  static constexpr const char* kWord = "truck";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Truck::ticket},
                      Field{"mix", &Truck::mix},
                      Field{"volume", &Truck::volume, {0, 100, "m3", true}},
                      Field{"batched", &Truck::batched},
                      Field{"arrived", &Truck::arrived},
                      Field{"water_added", &Truck::water_added, {0, 5, "m3"}},
                      Field{"returned", &Truck::returned, {0, 100, "m3"}}};
  }
  [[nodiscard]] const char* says() const { return said("Truck {ticket}"); }
  bool operator==(const Truck&) const = default;
};
struct Discharge {
  TicketId ticket;
  std::optional<ElementId> element;
  std::optional<Moment> ended;
  std::optional<Volume> volume{};  ///< a part of the load; none: all of it, or what was left
  static constexpr const char* kWord = "discharge";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Discharge::ticket}, Field{"element", &Discharge::element},
                      Field{"ended", &Discharge::ended},
                      Field{"volume", &Discharge::volume, {0, 100, "m3", true}}};
  }
  [[nodiscard]] const char* says() const {
    return ended ? said("Discharged {ticket}") : said("Discharging {ticket}");
  }
  bool operator==(const Discharge&) const = default;
};
struct Test {
  TicketId ticket;
  std::optional<Length> slump;
  std::optional<Celsius> temp;
  std::optional<double> air;  ///< share of the volume, per cent
  std::optional<MassPerVolume> density;
  std::vector<SpecimenId> specimens{};  ///< taken of it, to be broken later
  static constexpr const char* kWord = "test";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Test::ticket},
                      Field{"slump", &Test::slump, {0, 0.9, "m"}},
                      Field{"temp", &Test::temp, kTemperatures},
                      Field{"air", &Test::air, {0, 30, "per cent"}},
                      Field{"density", &Test::density, {500, 6000, "kg/m3"}},
                      Field{"specimens", &Test::specimens, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Test of {ticket}"); }
  bool operator==(const Test&) const = default;
};
struct AirTemp {
  Celsius temp;
  std::optional<double> humidity{};  ///< relative, per cent
  std::optional<Velocity> wind{};    ///< over the concrete
  static constexpr const char* kWord = "air-temp";
  static constexpr auto fields() {
    return std::tuple{Field{"temp", &AirTemp::temp, kTemperatures},
                      Field{"humidity", &AirTemp::humidity, {0, 100, "per cent"}},
                      Field{"wind", &AirTemp::wind, {0, 50, "m/s"}}};
  }
  [[nodiscard]] const char* says() const { return said("Air {temp}"); }
  bool operator==(const AirTemp&) const = default;
};
/// How a joint that set, or is about to, is to be treated; decided by whoever logs it.
struct Joint {
  ElementId element;
  std::optional<int> lift;  ///< the one below
  std::optional<int> bay;
  std::string decision;
  std::string treatment;
  static constexpr const char* kWord = "joint";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Joint::element}, Field{"lift", &Joint::lift, kLifts},
                      Field{"bay", &Joint::bay, kBays}, Field{"decision", &Joint::decision},
                      Field{"treatment", &Joint::treatment, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Joint decided: {decision}"); }
  bool operator==(const Joint&) const = default;
};
/// A reading of the penetration resistance of a mix's mortar (ASTM C403).
struct Penetration {
  MixId mix;
  Moment mixed;  ///< when water met cement; readings of one sample share it
  Pressure resistance;
  std::optional<Celsius> temp;  ///< of the sample
  static constexpr const char* kWord = "penetration";
  static constexpr auto fields() {
    return std::tuple{Field{"mix", &Penetration::mix},
                      Field{"mixed", &Penetration::mixed, {}, Need::must, false},
                      Field{"resistance", &Penetration::resistance, {0, 100, "MPa", true}},
                      Field{"temp", &Penetration::temp, kTemperatures}};
  }
  [[nodiscard]] const char* says() const { return said("Penetration of {mix}: {resistance}"); }
  bool operator==(const Penetration&) const = default;
};

using ConcreteKinds = std::tuple<Truck, Discharge, Test, AirTemp, Joint, Penetration>;

}  // namespace event

}  // namespace rb
