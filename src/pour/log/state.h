// The state of a pour: what the events add up to. Plain values; made only by fold().
// Elements, rows and bays are indices into the plan (from 0); lift numbers are the script's (from
// 1). Times inside are seconds on the pour's own clock, which starts at `zero` (its first event),
// so that the engineering deals in plain differences.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "pour/log/event_log.h"
#include "pour/log/fold_memory.h"
#include "pour/log/kinds_after.h"
#include "pour/log/kinds_concrete.h"
#include "pour/log/kinds_paper.h"
#include "pour/log/kinds_placing.h"
#include "pour/log/kinds_review.h"
#include "trade/shape/surface.h"

namespace rb {

struct Correction {
  EventRef target = 0;
  EventRef made_by = 0;
  std::string before;  ///< the line as it read
  std::string after;   ///< empty when struck
  bool operator==(const Correction&) const = default;
};

struct TopReading {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  std::size_t bay = 0;
  Length read;
  Length stood;  ///< the height that stood before; the higher stands after
  [[nodiscard]] bool fell() const { return read < stood; }
  bool operator==(const TopReading&) const = default;
};

/// A bay of a lift: when concrete came to it, and when its top was last read.
struct BayOfLift {
  std::optional<Seconds> started{};  ///< its bay-start
  std::optional<Seconds> read{};     ///< of its placing
  bool operator==(const BayOfLift&) const = default;
};

struct LiftState {
  EventRef ref = 0;
  int lift = 0;
  Seconds started{};
  std::optional<Seconds> ended{};       ///< its last lift-end
  Seconds last_reading{};               ///< of its placing; `started` when there is none yet
  std::optional<Seconds> next_start{};  ///< when the next lift on the element started
  std::vector<Length> bottom{}, top{};  ///< bay by bay
  std::vector<bool> bay_ended{};
  std::vector<BayOfLift> bays{};
  bool bay_wise = false;  ///< something was logged of one bay of it alone
  /// Filled bay after bay, and concrete has not come to this one: neither said nor read.
  [[nodiscard]] bool empty(std::size_t bay) const;
  /// Filled bay after bay, and nobody said when concrete came to this one: until its first reading
  /// it may have stood lower than drawn, and risen faster.
  [[nodiscard]] bool start_missing(std::size_t bay) const;
  /// When concrete came to a bay, as far as is known.
  [[nodiscard]] Seconds began(std::size_t bay) const { return bays[bay].started.value_or(started); }
  bool operator==(const LiftState&) const = default;
};

/// What happened to a row, in order of time: indices into PourState::runs and hangs.
struct RowState {
  std::vector<std::size_t> runs, hangs;
  bool operator==(const RowState&) const = default;
};

struct ElementState {
  std::vector<trade::TopCurve> tops;  ///< one a bay
  std::vector<LiftState> lifts;       ///< in the order they were started
  std::vector<RowState> rows;         ///< as the plan's
  bool operator==(const ElementState&) const = default;
};

struct HangState {
  EventRef ref = 0;
  std::size_t element = 0, row = 0;
  Seconds from{};
  std::optional<Seconds> to;
  std::vector<bool> places;  ///< which of the row's places hold a motor that works
  bool cables = false;
  /// The motor-out it goes on from, a place poorer; `ref` is still what was hung.
  std::optional<EventRef> out{};
  /// False: nobody logged the row as hung (again); it only keeps motors that are out of work from
  /// counting with the rest. Its `ref` is the motor-out then.
  [[nodiscard]] bool stands() const { return !out || ref != *out; }
  bool operator==(const HangState&) const = default;
};

/// What a run turned at from a moment on.
struct RunSpeed {
  Seconds from{};
  Frequency speed;
  bool operator==(const RunSpeed&) const = default;
};

/// When an inverter that feeds some motors of a run tripped: those stood still from there on.
struct RunTrip {
  Seconds at{};
  std::size_t inverter = 0;
  bool operator==(const RunTrip&) const = default;
};

struct RunState {
  EventRef ref = 0;
  std::optional<EventRef> rest;  ///< what ended it: a rest, a trip, or a start anew
  std::size_t element = 0, row = 0;
  Seconds from{};
  std::optional<Seconds> to;  ///< none: it was never rested (or runs now)
  bool cables = false;        ///< a hang with cables confirmed stood when it began
  /// In order of time: the run's own, then what the inverters that feed it were set to, of several
  /// the least. Before the first nobody said.
  std::vector<RunSpeed> speeds{};
  std::vector<RunTrip> trips{};  ///< that did not end it: other motors of the row ran on
  [[nodiscard]] std::optional<Frequency> fastest() const;
  [[nodiscard]] std::optional<Frequency> slowest() const;
  /// Nobody said what it turned at when it began.
  [[nodiscard]] bool speed_untold() const { return speeds.empty() || speeds.front().from > from; }
  bool operator==(const RunState&) const = default;
};

/// An inverter, of the plan's, as it was set.
struct SpeedState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t inverter = 0;
  event::Speed what;
  bool operator==(const SpeedState&) const = default;
};

struct TripState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t inverter = 0;
  bool operator==(const TripState&) const = default;
};

/// A motor out of work, and the places of rows it left.
struct MotorOutState {
  struct Place {
    std::size_t element = 0, row = 0, place = 0;
    bool operator==(const Place&) const = default;
  };
  EventRef ref = 0;
  Seconds at{};
  std::vector<Place> places;  ///< none: it hung nowhere
  event::MotorOut what;
  bool operator==(const MotorOutState&) const = default;
};

struct InsertState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  std::optional<std::size_t> bay;
  event::Insert what;
  bool operator==(const InsertState&) const = default;
};

/// What of a load went into one element in one go.
struct PartState {
  EventRef ref = 0;  ///< the event that began it
  Seconds from{};
  std::optional<Seconds> to{};           ///< none: its end was not told
  std::optional<std::size_t> element{};  ///< none: not told, it may be any
  std::optional<Volume> volume{};        ///< none: all of it, or what was left
  [[nodiscard]] bool may_be_in(std::size_t which) const { return element.value_or(which) == which; }
  bool operator==(const PartState&) const = default;
};

struct TruckState {
  TicketId ticket;
  std::optional<EventRef> ref{};  ///< the truck event; a discharge may come without one
  std::optional<event::Truck> what{};
  std::vector<PartState> parts{};  ///< its discharges, as they were told

  /// When its discharge began; none: not yet.
  [[nodiscard]] std::optional<Seconds> discharged() const;
  /// When the part begun last was over; none: it goes on, or its end was not told.
  [[nodiscard]] std::optional<Seconds> ended() const;
  /// Of the element told of last; none: not told.
  [[nodiscard]] std::optional<std::size_t> element() const;
  /// Whether any of it may have gone there.
  [[nodiscard]] bool may_be_in(std::size_t which) const;
  /// What its parts' volumes leave of the load; none: they do not tell.
  [[nodiscard]] std::optional<Volume> left() const;
  /// What went into the forms: the parts' volumes where all are told, else the load less what went
  /// back.
  [[nodiscard]] Volume placed() const;
  bool operator==(const TruckState&) const = default;
};

/// What was logged, as it stands.
template <class Kind>
struct Logged {
  EventRef ref = 0;
  Seconds at{};
  Kind what;
  bool operator==(const Logged&) const = default;
};
using PenetrationState = Logged<event::Penetration>;
using WeatherState = Logged<event::AirTemp>;  ///< a reading with humidity or wind
using EnrolState = Logged<event::Enrol>;

struct TestState {
  EventRef ref = 0;
  Seconds at{};
  event::Test what;
  bool operator==(const TestState&) const = default;
};

/// An element under curing.
struct CureState {
  EventRef ref = 0;
  Seconds from{};
  std::optional<Seconds> to;
  std::size_t element = 0;
  std::string how;
  bool operator==(const CureState&) const = default;
};

struct ConcreteTempState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  event::ConcreteTemp what;
  bool operator==(const ConcreteTempState&) const = default;
};

struct PermitState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  event::PermitStrip what;
  bool operator==(const PermitState&) const = default;
};

struct SpecimenState {
  EventRef ref = 0;
  Seconds at{};
  TicketId ticket;  ///< of the load whose test took it
  event::Specimen what;
  bool operator==(const SpecimenState&) const = default;
};

struct MovedState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  event::Moved what;
  bool operator==(const MovedState&) const = default;
};

struct JointState {
  EventRef ref = 0;
  Seconds at{};
  std::size_t element = 0;
  std::optional<std::size_t> bay;
  event::Joint what;
  bool operator==(const JointState&) const = default;
};

struct OverrideState {
  EventRef ref = 0;
  Seconds at{};
  std::optional<std::size_t> element, row;
  event::Override what;
  bool operator==(const OverrideState&) const = default;
};

/// A group of findings accepted or sent back for the figures it had.
struct ReviewState {
  EventRef ref = 0;
  Seconds at{};
  bool accepted = false;  ///< else sent back
  std::string finding;    ///< the group's key
  Hex figures;
  std::string why;  ///< the note or the reason; may be empty
  bool operator==(const ReviewState&) const = default;
};

/// The plan as it was amended, path by path.
struct AmendState {
  EventRef ref = 0;
  Seconds at{};
  std::string was;  ///< what stood at the path, JSON text; empty: nothing
  event::Amend what;
  bool operator==(const AmendState&) const = default;
};

struct HoldState {
  EventRef ref = 0;
  Seconds from{};
  std::optional<Seconds> to;
  std::string reason;                     ///< as a user wrote it
  std::optional<event::Moving> moved{};   ///< what moved, instead of a reason
  std::optional<event::Chosen> chosen{};  ///< the reason, where it was chosen and not typed
  bool operator==(const HoldState&) const = default;
};

struct ReadyState {
  EventRef ref = 0;
  Seconds at{};
  event::Ready what;
  bool operator==(const ReadyState&) const = default;
};

struct ClockStep {
  EventRef ref = 0;
  Seconds at{};
  Seconds step{};  ///< wall clock minus steady clock, against the event before
  bool operator==(const ClockStep&) const = default;
};

/// A plan held by many; two are equal when the plans are.
struct SharedPlan : std::shared_ptr<const Plan> {
  using std::shared_ptr<const Plan>::shared_ptr;
  SharedPlan() = default;
  explicit(false) SharedPlan(std::shared_ptr<const Plan> plan)
      : std::shared_ptr<const Plan>(std::move(plan)) {}
  bool operator==(const SharedPlan& other) const {
    return get() == other.get() || (*this && other && **this == *other);
  }
};

struct PourState {
  PourId pour;
  SharedPlan plan;  ///< as amended by then; never null once folded
  Moment zero{};
  std::optional<Moment> closed;
  Seconds last{};               ///< the latest moment any event tells of
  EventLog log;                 ///< in order of entry
  std::vector<EventRef> order;  ///< the log in order of time
  std::vector<EventRef> taps;   ///< the log without openings and corrections
  std::vector<Correction> corrections;
  std::vector<ElementState> elements;  ///< as the plan's
  std::vector<TopReading> readings;
  std::vector<HangState> hangs;
  std::vector<RunState> runs;  ///< in order of start
  std::vector<InsertState> inserts;
  std::vector<SpeedState> speeds;
  std::vector<TripState> trips;
  std::vector<TruckState> trucks;
  std::vector<TestState> tests;
  std::vector<PenetrationState> penetrations;
  std::vector<std::pair<Seconds, Celsius>> air;
  std::vector<WeatherState> weather;  ///< those of `air` that tell more
  std::vector<CureState> cures;       ///< in order of start
  std::vector<ConcreteTempState> concrete_temps;
  std::vector<PermitState> permits;
  std::vector<SpecimenState> specimens;
  std::vector<HoldState> holds;
  std::vector<MovedState> moved;
  std::vector<JointState> joints;
  std::vector<OverrideState> overrides;
  std::vector<ReadyState> ready;
  std::vector<EventRef> notes, signs, strips, blemishes, repairs, reinspections, photos;
  std::vector<EventRef> inspections;  ///< of faces
  std::vector<MotorOutState> motors_out;
  std::vector<ReviewState> reviews;  ///< check/review.h says what stands of them
  std::vector<AmendState> amends;
  std::vector<EnrolState> enrolments;
  std::vector<ClockStep> clock_steps;
  FoldMemory memory;  ///< the fold's own; all are equal
  bool operator==(const PourState& other) const = default;

  [[nodiscard]] Seconds clock(Moment moment) const { return between(zero, moment); }
  [[nodiscard]] Moment moment(Seconds at) const { return after(zero, at); }
  /// A moment an event tells of besides its own, by the wall clock it was told by.
  [[nodiscard]] Seconds told(EventRef event, Moment moment) const;
  [[nodiscard]] bool open() const { return !closed; }
  [[nodiscard]] const RunState* running(std::size_t element, std::size_t row) const;
  [[nodiscard]] const HangState* hanging(std::size_t element, std::size_t row) const;
  [[nodiscard]] const CureState* curing(std::size_t element) const;
  /// The lift being placed on an element now, or none.
  [[nodiscard]] const LiftState* placing(std::size_t element) const;
  [[nodiscard]] const Row& row_of(const RunState& run) const {
    return plan->elements[run.element].rows[run.row];
  }
};

/// The ticket's truck, an index into PourState::trucks; none when the ticket is new.
std::optional<std::size_t> truck_of(const PourState& state, const TicketId& ticket);
/// The key a person signs with: that enrolled last. Null: none was.
const EnrolState* enrolled(const PourState& state, const PersonId& person);
/// The mix a ticket brought, as its truck was entered; none when it was not.
const Mix* mix_of(const PourState& state, const TicketId& ticket);

}  // namespace rb
