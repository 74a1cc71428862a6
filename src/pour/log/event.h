// What happened on the form, one value an event. Kinds and fields are those of the pour script
// (format version 1). A kind is told here once: its word in a script, its fields (field.h) and what
// is said of it; a new one is added to Happening, and fold_happening.cpp says what it does.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <variant>
#include <vector>

#include "base/ids.h"
#include "base/moment.h"
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
  static constexpr const char* kWord = "insert";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Insert::element},
                      Field{"lift", &Insert::lift, kLifts},
                      Field{"bay", &Insert::bay, kBays},
                      Field{"group", &Insert::group, {1, 5}},
                      Field{"spacing", &Insert::spacing, {0, 20, "m", true}},
                      Field{"seconds", &Insert::each, {0, 86400, "s"}},
                      Field{"depth_below", &Insert::depth_below, {0, 20, "m"}}};
  }
  [[nodiscard]] const char* says() const { return said("Inserted, lift {lift}"); }
  bool operator==(const Insert&) const = default;
};
struct Truck {
  TicketId ticket;
  MixId mix;
  Volume volume;
  Moment batched, arrived;
  static constexpr const char* kWord = "truck";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Truck::ticket}, Field{"mix", &Truck::mix},
                      Field{"volume", &Truck::volume, {0, 100, "m3", true}},
                      Field{"batched", &Truck::batched}, Field{"arrived", &Truck::arrived}};
  }
  [[nodiscard]] const char* says() const { return said("Truck {ticket}"); }
  bool operator==(const Truck&) const = default;
};
struct Discharge {
  TicketId ticket;
  std::optional<ElementId> element;
  std::optional<Moment> ended;
  static constexpr const char* kWord = "discharge";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Discharge::ticket}, Field{"element", &Discharge::element},
                      Field{"ended", &Discharge::ended}};
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
  static constexpr const char* kWord = "test";
  static constexpr auto fields() {
    return std::tuple{Field{"ticket", &Test::ticket}, Field{"slump", &Test::slump, {0, 0.9, "m"}},
                      Field{"temp", &Test::temp, kTemperatures},
                      Field{"air", &Test::air, {0, 30, "per cent"}},
                      Field{"density", &Test::density, {500, 6000, "kg/m3"}}};
  }
  [[nodiscard]] const char* says() const { return said("Test of {ticket}"); }
  bool operator==(const Test&) const = default;
};
struct AirTemp {
  Celsius temp;
  static constexpr const char* kWord = "air-temp";
  static constexpr auto fields() {
    return std::tuple{Field{"temp", &AirTemp::temp, kTemperatures}};
  }
  [[nodiscard]] const char* says() const { return said("Air {temp}"); }
  bool operator==(const AirTemp&) const = default;
};
struct Hold {
  std::string reason;
  static constexpr const char* kWord = "hold";
  static constexpr auto fields() { return std::tuple{Field{"reason", &Hold::reason}}; }
  [[nodiscard]] const char* says() const { return said("Hold: {reason}"); }
  bool operator==(const Hold&) const = default;
};
struct Resume {
  std::string reason;
  static constexpr const char* kWord = "resume";
  static constexpr auto fields() {
    return std::tuple{Field{"reason", &Resume::reason, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Resumed"); }
  bool operator==(const Resume&) const = default;
};
struct Note {
  std::string text;
  std::optional<ElementId> element;
  std::optional<int> lift;
  static constexpr const char* kWord = "note";
  static constexpr auto fields() {
    return std::tuple{Field{"text", &Note::text}, Field{"element", &Note::element},
                      Field{"lift", &Note::lift, kLifts}};
  }
  [[nodiscard]] const char* says() const { return said("Note: {text}"); }
  bool operator==(const Note&) const = default;
};
struct Fix {
  EventId target;
  std::string set;  ///< the fields to change, a JSON object's text
  std::string why;
  static constexpr const char* kWord = "fix";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Fix::target}, ObjectField{"set", &Fix::set},
                      Field{"why", &Fix::why}};
  }
  [[nodiscard]] const char* says() const { return said("Correction"); }
  bool operator==(const Fix&) const = default;
};
struct Strike {
  EventId target;
  std::string why;
  static constexpr const char* kWord = "strike";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Strike::target}, Field{"why", &Strike::why}};
  }
  [[nodiscard]] const char* says() const { return said("Struck out"); }
  bool operator==(const Strike&) const = default;
};
struct PourClose {
  static constexpr const char* kWord = "pour-close";
  static constexpr auto fields() { return std::tuple<>{}; }
  [[nodiscard]] const char* says() const { return said("Pour closed"); }
  bool operator==(const PourClose&) const = default;
};
struct Sign {
  std::string role;  ///< foreman, inspector or superintendent
  std::string verdict;
  std::string comment;
  static constexpr const char* kWord = "sign";
  static constexpr auto fields() {
    return std::tuple{Field{"role", &Sign::role}, Field{"verdict", &Sign::verdict},
                      Field{"comment", &Sign::comment, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Signed: {role}"); }
  bool operator==(const Sign&) const = default;
};
struct Strip {
  ElementId element;
  Side side = Side::near_side;
  static constexpr const char* kWord = "strip";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Strip::element}, Field{"side", &Strip::side}};
  }
  [[nodiscard]] const char* says() const { return said("Stripped {element}"); }
  bool operator==(const Strip&) const = default;
};
struct Blemish {
  ElementId element;
  Side side = Side::near_side;
  std::string kind;
  Patch patch;
  std::string note;
  static constexpr const char* kWord = "blemish";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Blemish::element}, Field{"side", &Blemish::side},
                      Field{"kind", &Blemish::kind}, PatchField{&Blemish::patch, kPositions},
                      Field{"note", &Blemish::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Blemish: {kind}"); }
  bool operator==(const Blemish&) const = default;
};
struct Repair {
  EventId target;
  std::string note;
  static constexpr const char* kWord = "repair";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Repair::target},
                      Field{"note", &Repair::note, {}, Need::shown}};
  }
  [[nodiscard]] const char* says() const { return said("Repair: {note}"); }
  bool operator==(const Repair&) const = default;
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

}  // namespace event

using Happening =
    std::variant<event::PourOpen, event::Ready, event::Hang, event::TakeDown, event::LiftStart,
                 event::Top, event::LiftEnd, event::Run, event::Rest, event::Insert, event::Truck,
                 event::Discharge, event::Test, event::AirTemp, event::Hold, event::Resume,
                 event::Note, event::Fix, event::Strike, event::PourClose, event::Sign,
                 event::Strip, event::Blemish, event::Repair, event::Penetration>;

/// When an event was entered, by the wall clock and by the clock that never steps.
struct Entry {
  Moment wall;
  Seconds steady{};  ///< since the tablet started
  std::string boot;  ///< which start of the tablet that was
  /// When the book took it; none for an event that came out of no book. The book's own word, told
  /// by no script: two entries that differ in it alone are the same.
  std::optional<Moment> kept{};
  bool operator==(const Entry& other) const {
    return wall == other.wall && steady == other.steady && boot == other.boot;
  }
};

/// Marks what came in by a script in one go: it was not tapped, so neither early nor late.
inline constexpr const char* kScriptBoot = "script";
inline Entry script_entry(Entry entry) {
  entry.boot = kScriptBoot;
  return entry;
}

struct Event {
  EventId id;   ///< the book's; on a script line not yet in a book, the line's own or empty
  Moment at{};  ///< when it happened
  PersonId by;
  Happening what;
  std::string extra;  ///< fields this version does not know, kept as a JSON object's text
  std::optional<Entry> entry;
  Seconds uncertain{};  ///< by how much `at` may be off: the tablet stood still as it was tapped
  bool operator==(const Event&) const = default;
};

/// The word of an event's kind in a pour script ("lift-start").
const char* kind_text(const Happening& what);
/// Whether a script's `do` names a kind this program knows; books of a newer program may hold
/// others.
bool is_kind(std::string_view word);
/// Every kind's word, in the order of Happening.
const std::vector<std::string>& kind_words();

/// An event entered more than this after it happened is shown as entered late.
inline constexpr Seconds kLateEntry{120};

}  // namespace rb
