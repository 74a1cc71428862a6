// What the fold keeps beside the state so that one more event costs what it touches: what each
// event changed, to be taken back when one is entered that happened before it. Held by state.h and
// used in this house only.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <variant>
#include <vector>

#include "base/moment.h"
#include "base/quantity.h"

namespace rb {

struct Plan;

/// One change an event made, and what stood before. Indices are into the state's own lists.
namespace changed {

enum class List {
  ready,
  inserts,
  tests,
  penetrations,
  air,
  holds,
  moved,
  joints,
  overrides,
  notes,
  signs,
  strips,
  blemishes,
  repairs,
  speeds,
  trips,
  weather,
  cures,
  concrete_temps,
  permits,
  specimens,
  reinspections,
  photos,
  motors_out,
  reviews,
  enrolments,
  inspections
};
struct Grew {
  List list;
};
struct HangBegan {};
struct HangEnded {
  std::size_t hang;
};
struct RunBegan {};
struct RunEnded {
  std::size_t run;
};
struct SpeedNamed {
  std::size_t run;
};
struct RunTripped {
  std::size_t run;
};
struct LiftBegan {
  std::size_t element;
};
struct LiftRead {
  std::size_t element, lift;
  Seconds last_reading;
  std::optional<Seconds> ended;
  bool bay_wise;
};
struct BayBegan {
  std::size_t element, lift, bay;
};
struct TopRead {
  std::size_t element, bay;
  std::size_t points;  ///< of the bay's top
};
struct LiftTopRead {
  std::size_t element, lift, bay;
  Length top;
  bool ended;
  std::optional<Seconds> read;
};
struct TruckCame {};
struct TruckEntered {
  std::size_t truck;
};
struct Discharged {
  std::size_t truck;
};
struct DischargeEnded {
  std::size_t truck, part;
  std::optional<Volume> volume;  ///< told when it began
};
struct HoldEnded {};
struct CureEnded {
  std::size_t cure;
};
struct Closed {};
struct Amended {
  std::shared_ptr<const Plan> before;
  std::optional<std::size_t> grown{};  ///< the element that got one more row
};

}  // namespace changed

using StateChange =
    std::variant<changed::Grew, changed::HangBegan, changed::HangEnded, changed::RunBegan,
                 changed::RunEnded, changed::SpeedNamed, changed::RunTripped, changed::LiftBegan,
                 changed::LiftRead, changed::BayBegan, changed::TopRead, changed::LiftTopRead,
                 changed::TruckCame, changed::TruckEntered, changed::Discharged,
                 changed::DischargeEnded, changed::HoldEnded, changed::CureEnded, changed::Closed,
                 changed::Amended>;

/// Within one start of the tablet the steady clock tells true spans: what the wall clock has
/// stepped since the first event of that start is taken out of every later moment.
struct BootClock {
  Moment wall;       ///< of the event entered last
  Seconds steady{};  ///< the same
  Seconds stepped{};
};

/// A trace left by a change of the state, made or taken back; as_it_was.h reads it.
struct Trace {
  std::uint64_t stamp = 0;  ///< greater than that of every trace left before, of any state
  Seconds from{};           ///< what happened before this moment stands as it did
  enum class Of { moment, run, hang, truck, test, penetration, air, top } of = Of::moment;
  std::size_t index = 0;  ///< of the item that changed, came or went; of a top: its element
  std::size_t element = 0, row = 0;  ///< of a run or a hang
};

/// The events of a log by how they came into the book.
struct Came {
  std::size_t brought = 0, tapped = 0;
  std::vector<std::size_t> odd;  ///< entered or kept at another time than they happened, in order
};

struct FoldMemory {
  std::unordered_map<std::string, std::size_t> ids;  ///< of the events that have one, into the log
  std::unordered_map<std::string, std::size_t> tickets;  ///< into PourState::trucks
  std::vector<Trace> traces;                             ///< the last of them
  Came came;
  std::unordered_map<std::string, BootClock> boots;
  std::vector<Seconds> stepped;          ///< taken out of each event's moment, as the log
  std::vector<std::size_t> corrections;  ///< the fixes and strikes in the log
  std::vector<StateChange> changes;      ///< in the order they were made
  struct Mark {
    std::size_t changes;  ///< made before an event
    Seconds last;         ///< PourState::last before it
  };
  std::vector<Mark> marks;  ///< as PourState::order
  /// Says nothing of a pour: states that tell the same are the same, however they were folded.
  bool operator==(const FoldMemory&) const { return true; }
};

}  // namespace rb
