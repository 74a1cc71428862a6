// What happened on the form, one value an event. Kinds and fields are those of the pour script
// (format version 1); event_json.h reads and writes them.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/ids.h"
#include "base/moment.h"
#include "base/quantity.h"
#include "pour/plan.h"

namespace rb {

/// Where something happened to a row: an element's side and the row on it.
struct RowPlace {
  ElementId element;
  Side side = Side::near_side;
  RowId row;
  bool operator==(const RowPlace&) const = default;
};

namespace event {

struct PourOpen {
  PourId pour;
  std::shared_ptr<const Plan> plan;  ///< never null
  bool operator==(const PourOpen& o) const { return pour == o.pour && *plan == *o.plan; }
};
struct Ready {
  std::string item;
  bool ok = false;
  std::string note;
  bool operator==(const Ready&) const = default;
};
struct Hang {
  RowPlace place;
  std::vector<MotorId> motors;
  bool cables = false;  ///< every safety cable was seen fixed
  bool operator==(const Hang&) const = default;
};
struct TakeDown {
  RowPlace place;
  bool operator==(const TakeDown&) const = default;
};
struct LiftStart {
  ElementId element;
  int lift = 0;
  bool operator==(const LiftStart&) const = default;
};
struct Top {
  ElementId element;
  Length height;
  std::optional<int> bay;  ///< from 1; none = all bays
  bool operator==(const Top&) const = default;
};
struct LiftEnd {
  ElementId element;
  int lift = 0;
  Length height;
  std::optional<int> bay;
  bool operator==(const LiftEnd&) const = default;
};
struct Run {
  RowPlace place;
  std::optional<Frequency> speed;
  bool operator==(const Run&) const = default;
};
struct Rest {
  RowPlace place;
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
  bool operator==(const Insert&) const = default;
};
struct Truck {
  TicketId ticket;
  MixId mix;
  Volume volume;
  Moment batched, arrived;
  bool operator==(const Truck&) const = default;
};
struct Discharge {
  TicketId ticket;
  std::optional<ElementId> element;
  std::optional<Moment> ended;
  bool operator==(const Discharge&) const = default;
};
struct Test {
  TicketId ticket;
  std::optional<Length> slump;
  std::optional<Celsius> temp;
  std::optional<double> air;  ///< share of the volume, per cent
  std::optional<MassPerVolume> density;
  bool operator==(const Test&) const = default;
};
struct AirTemp {
  Celsius temp;
  bool operator==(const AirTemp&) const = default;
};
struct Hold {
  std::string reason;
  bool operator==(const Hold&) const = default;
};
struct Resume {
  std::string reason;
  bool operator==(const Resume&) const = default;
};
struct Note {
  std::string text;
  std::optional<ElementId> element;
  std::optional<int> lift;
  bool operator==(const Note&) const = default;
};
struct Fix {
  EventId target;
  std::string set;  ///< the fields to change, a JSON object's text
  std::string why;
  bool operator==(const Fix&) const = default;
};
struct Strike {
  EventId target;
  std::string why;
  bool operator==(const Strike&) const = default;
};
struct PourClose {
  bool operator==(const PourClose&) const = default;
};
struct Sign {
  std::string role;  ///< foreman, inspector or superintendent
  std::string verdict;
  std::string comment;
  bool operator==(const Sign&) const = default;
};
struct Strip {
  ElementId element;
  Side side = Side::near_side;
  bool operator==(const Strip&) const = default;
};
struct Blemish {
  ElementId element;
  Side side = Side::near_side;
  std::string kind;
  Patch patch;
  std::string note;
  bool operator==(const Blemish&) const = default;
};
struct Repair {
  EventId target;
  std::string note;
  bool operator==(const Repair&) const = default;
};
/// A reading of the penetration resistance of a mix's mortar (ASTM C403).
struct Penetration {
  MixId mix;
  Moment mixed;  ///< when water met cement; readings of one sample share it
  Pressure resistance;
  std::optional<Celsius> temp;  ///< of the sample
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

/// An event entered more than this after it happened is shown as entered late.
inline constexpr Seconds kLateEntry{120};

}  // namespace rb
