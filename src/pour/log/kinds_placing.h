// What is done to a form and its concrete: ready, hang, lifts, tops, runs, insertions. Shared by
// event.h.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "base/ids.h"
#include "base/quantity.h"
#include "base/said.h"
#include "pour/plan/field.h"
#include "pour/plan/plan.h"

namespace rb {

/// Where something happened to a row: an element's side and the row on it.
struct RowPlace {
  ElementId element;
  Side side = Side::near_side;
  RowId row;
  bool operator==(const RowPlace&) const = default;
};

namespace event {

// Wide enough for any site, narrow enough to catch a wrong unit.
inline constexpr Span kLifts{1, 999};
inline constexpr Span kBays{1, 500};
inline constexpr Span kHeights{0, 200, "m"};
inline constexpr Span kPositions{0, 500, "m"};
inline constexpr Span kTemperatures{-40, 80, "degC"};

struct PourOpen {
  PourId pour;
  std::shared_ptr<const Plan> plan;  ///< never null
  static constexpr const char* kWord = "pour-open";
  static constexpr auto fields() {
    return std::tuple{Field{"pour", &PourOpen::pour}, Field{"plan", &PourOpen::plan}};
  }
  [[nodiscard]] const char* says() const { return said("Pour opened"); }
  bool operator==(const PourOpen& o) const { return pour == o.pour && *plan == *o.plan; }
};
struct Ready {
  std::string item;
  bool ok = false;
  std::string note;
  static constexpr const char* kWord = "ready";
  static constexpr auto fields() {
    return std::tuple{Field{"item", &Ready::item}, Field{"ok", &Ready::ok},
                      Field{"note", &Ready::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return ok ? said("Ready: {item}") : said("Not OK: {item}");
  }
  bool operator==(const Ready&) const = default;
};
struct Hang {
  RowPlace place;
  std::vector<MotorId> motors;
  bool cables = false;  ///< every safety cable was seen fixed
  static constexpr const char* kWord = "hang";
  static constexpr auto fields() {
    return std::tuple{PlaceField{&Hang::place}, Field{"motors", &Hang::motors},
                      Field{"cables", &Hang::cables}};
  }
  [[nodiscard]] const char* says() const { return said("Hung row {row}"); }
  bool operator==(const Hang&) const = default;
};
struct TakeDown {
  RowPlace place;
  static constexpr const char* kWord = "take-down";
  static constexpr auto fields() { return std::tuple{PlaceField{&TakeDown::place}}; }
  [[nodiscard]] const char* says() const { return said("Took down row {row}"); }
  bool operator==(const TakeDown&) const = default;
};
struct LiftStart {
  ElementId element;
  int lift = 0;
  static constexpr const char* kWord = "lift-start";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &LiftStart::element},
                      Field{"lift", &LiftStart::lift, kLifts}};
  }
  [[nodiscard]] const char* says() const { return said("Started lift {lift}"); }
  bool operator==(const LiftStart&) const = default;
};
/// Concrete reaches a bay: until then its top stands where it stood.
struct BayStart {
  ElementId element;
  int lift = 0;
  int bay = 0;  ///< from 1
  static constexpr const char* kWord = "bay-start";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &BayStart::element}, Field{"lift", &BayStart::lift, kLifts},
                      Field{"bay", &BayStart::bay, kBays}};
  }
  [[nodiscard]] const char* says() const { return said("Concrete in bay {bay}, lift {lift}"); }
  bool operator==(const BayStart&) const = default;
};
struct Top {
  ElementId element;
  Length height;
  std::optional<int> bay;  ///< from 1; none = all bays
  static constexpr const char* kWord = "top";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Top::element}, Field{"height", &Top::height, kHeights},
                      Field{"bay", &Top::bay, kBays}};
  }
  [[nodiscard]] const char* says() const { return said("Top {height}"); }
  bool operator==(const Top&) const = default;
};
struct LiftEnd {
  ElementId element;
  int lift = 0;
  Length height;
  std::optional<int> bay;
  static constexpr const char* kWord = "lift-end";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &LiftEnd::element}, Field{"lift", &LiftEnd::lift, kLifts},
                      Field{"height", &LiftEnd::height, kHeights},
                      Field{"bay", &LiftEnd::bay, kBays}};
  }
  [[nodiscard]] const char* says() const { return said("Ended lift {lift} at {height}"); }
  bool operator==(const LiftEnd&) const = default;
};
struct Run {
  RowPlace place;
  std::optional<Frequency> speed;
  static constexpr const char* kWord = "run";
  static constexpr auto fields() {
    return std::tuple{PlaceField{&Run::place}, Field{"vpm", &Run::speed, {0, 60000, "vpm", true}}};
  }
  [[nodiscard]] const char* says() const { return said("Run row {row}"); }
  bool operator==(const Run&) const = default;
};
/// An inverter set to a speed: what it feeds turns at it until it is set anew.
struct Speed {
  InverterId inverter;
  Frequency speed;
  std::optional<Potential> volts{};  ///< as set, or read at it
  static constexpr const char* kWord = "speed";
  static constexpr auto fields() {
    return std::tuple{Field{"inverter", &Speed::inverter},
                      Field{"vpm", &Speed::speed, {0, 60000, "vpm", true}},
                      Field{"volts", &Speed::volts, {0, 1000, "V", true}}};
  }
  [[nodiscard]] const char* says() const { return said("Inverter {inverter} set to {vpm}"); }
  bool operator==(const Speed&) const = default;
};
/// An inverter tripped: the motors it feeds stop.
struct Trip {
  InverterId inverter;
  static constexpr const char* kWord = "trip";
  static constexpr auto fields() { return std::tuple{Field{"inverter", &Trip::inverter}}; }
  [[nodiscard]] const char* says() const { return said("Inverter {inverter} tripped"); }
  bool operator==(const Trip&) const = default;
};
struct Rest {
  RowPlace place;
  static constexpr const char* kWord = "rest";
  static constexpr auto fields() { return std::tuple{PlaceField{&Rest::place}}; }
  [[nodiscard]] const char* says() const { return said("Rest row {row}"); }
  bool operator==(const Rest&) const = default;
};
struct Insert {
  ElementId element;
  int lift = 0;
  std::optional<int> bay;
  int group = 0;  ///< 1 to 5, by head size
  Length spacing;
  Seconds each{};
  Length depth_below;
  std::optional<int> points{};  ///< places worked
  std::optional<int> heads{};   ///< vibrators at once
  static constexpr const char* kWord = "insert";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Insert::element},
                      Field{"lift", &Insert::lift, kLifts},
                      Field{"bay", &Insert::bay, kBays},
                      Field{"group", &Insert::group, {1, 5}},
                      Field{"spacing", &Insert::spacing, {0, 20, "m", true}},
                      Field{"seconds", &Insert::each, {0, 86400, "s"}},
                      Field{"depth_below", &Insert::depth_below, {0, 20, "m"}},
                      Field{"points", &Insert::points, {0, 10000}},
                      Field{"heads", &Insert::heads, {1, 100}}};
  }
  [[nodiscard]] const char* says() const { return said("Inserted, lift {lift}"); }
  bool operator==(const Insert&) const = default;
};

using PlacingKinds = std::tuple<PourOpen, Ready, Hang, TakeDown, LiftStart, BayStart, Top, LiftEnd,
                                Run, Rest, Insert, Speed, Trip>;

}  // namespace event

}  // namespace rb
