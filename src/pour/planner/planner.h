// Plans a pour: from an element, a kind of motor and the limits, the rows and what hangs where, the
// pace, and a run sheet lift by lift. The plan it gives is one a pour can be opened with; following
// the run sheet keeps every limit the planner knows. A first plan for people who know the site to
// mend: the form designer agrees to vibrators on the form, a licensed electrician to the feed.
#pragma once

#include <optional>
#include <vector>

#include "base/saying.h"
#include "pour/plan/plan.h"
#include "trade/concrete/placing.h"

namespace rb {

/// What has no honest default (sizes, rating, the mix's set, the motor) is nothing until it is
/// given. Defaults: form 60 kg/m2, motors at 6000 vpm and 42 V, loads of 6 m3: common practice, no
/// source; lifts of 0.5 m: ACI 309R, about 20 in, from memory; reach 0.6 m: half of 4 ft, the
/// closest spacing ACI 309R gives, from memory; the rest our own choice, to be timed or asked for
/// on the site.

/// Which of the planner's guesses somebody gave: what was given stays, the rest may be varied
/// before a plan is refused.
struct GivenFigures {
  bool load = false, lift = false, sides = false, rise = false;
  bool operator==(const GivenFigures&) const = default;
};

struct PlanWish {
  ElementId element{"E1"};
  /// A deck is worked by internal vibrators from above, layer by layer and bay by bay: it has no
  /// rows, and of the wish its motors, form and rise are not asked.
  ElementKind kind = ElementKind::wall;
  Length length, height, thickness;
  trade::Section section = trade::Section::rect;
  std::optional<Length> thickness_top;
  Length bay = metres(3.0);     ///< bays are about this long
  std::vector<Length> bays;     ///< of their own lengths, from the left; empty: about `bay` each
  std::vector<Patch> openings;  ///< no concrete comes there
  std::vector<Beam> beams;      ///< under a deck
  double batter_deg = 0;        ///< of the face off plumb
  Pressure form_rating;
  MassPerArea form_mass = kilograms_per_m2(60);
  std::optional<Velocity> rise_limit;  ///< the form designer's own
  Velocity rise_wished = metres_per_hour(1.5);
  Length deepest_lift = metres(0.5);
  bool both_sides = false;

  Mix mix;
  Celsius concrete{20};  ///< as it will come
  trade::PressureMethod method = trade::PressureMethod::aci347;

  MotorType motor{{}, {}, hertz(100)};
  Length reach_x = metres(0.6), reach_z = metres(0.6);
  std::optional<Length> reach_pressure;  ///< none: twice reach_z
  std::optional<std::size_t> motors_at_hand;
  Potential volts = rb::volts(42);
  std::optional<Current> inverter_amps;  ///< none: no inverters are planned
  std::optional<Cable> cable;
  std::optional<Trunk> trunk{};  ///< of each inverter, for all it feeds
  std::optional<Generator> generator{};
  std::optional<Internal> internal{};  ///< on each inverter

  Volume load = cubic_metres(6);
  std::optional<double> trucks_per_hour;    ///< that can come; none: as many as it takes
  Seconds haul = std::chrono::minutes(30);  ///< batched to discharge begun

  int crew = 2;  ///< hands that hang motors; on a deck, that hold an internal vibrator each
  /// One of them takes one motor down and hangs it again.
  Seconds hang_time = std::chrono::minutes(5);
  Limits limits;
  GivenFigures given;

  [[nodiscard]] Length thickest() const {
    return std::max(thickness, thickness_top.value_or(thickness));
  }
  [[nodiscard]] trade::Taper taper() const {
    return {thickness, thickness_top.value_or(thickness), height};
  }
  bool operator==(const PlanWish&) const = default;
};

enum class PlanLimit {
  rise_wished,  ///< nobody asked for more
  rise_given,   ///< the form designer's rate
  pressure,     ///< the method's pressure at the rating
  head,         ///< on a running row, against the rating
  knit,         ///< the joint must be knitted before it sets
  trucks,       ///< they bring no more
  load_age,     ///< a load grows old
  crew,         ///< moves motors no faster
  vibrators,    ///< consolidate no faster
};
const char* to_text(PlanLimit limit);

/// How much of a limit the plan uses: 1 is all of it.
struct LimitUse {
  PlanLimit limit = PlanLimit::rise_wished;
  double share = 0;
  bool operator==(const LimitUse&) const = default;
};

/// Motors go from one row to another of the same side (or, from none, up from the ground). Never
/// begun before the last run that needs them where they are has ended, and done before the lift
/// begins that needs them where they go.
struct MotorsMove {
  std::optional<std::size_t> from;  ///< index into the element's rows
  std::size_t to = 0;
  Seconds takes{};
  Seconds begins{};  ///< from the first lift's start; below 0: before it
  [[nodiscard]] Seconds ends() const { return begins + takes; }
};

/// What internal vibrators do in a bay of a lift.
struct InsertStep {
  std::size_t bay = 0;
  int points = 0;  ///< all layers together
  int heads = 0;   ///< at once, by the group's least output; on a deck, all the hands there are
  Seconds fills{}, filled{};  ///< its concrete comes, from the first lift's start
  Seconds begins{};           ///< inserting
  Seconds takes{};            ///< 0: nobody reckoned with it
};
/// The group of internal vibrators that is planned with: heads of 50 to 90 mm. Our own choice.
inline constexpr int kPlannedGroup = 3;
/// From one point to the next on a deck, beside the time in a point: our own choice.
inline constexpr Seconds kNextPoint{5};

/// A truck: when its concrete is wanted at the form, and when it is placed.
struct PlannedLoad {
  Volume volume;
  Seconds begins{}, ends{};  ///< from the first lift's start
};
/// Nobody is sent a load under this unasked, but for an element that takes no more, and a last load
/// that is told as short: our own choice.
inline constexpr Volume kLeastLoad = cubic_metres(3);

struct LiftStep {
  int lift = 0;
  Length bottom, top;
  Volume concrete;
  Seconds begins{};  ///< from the first lift's start
  Seconds place{};   ///< placing it
  /// Begun in this lift or in the pause after it, in the order of time; what does not fit until
  /// they are needed is waited for.
  std::vector<MotorsMove> moves;
  std::vector<InsertStep> inserts;  ///< where the section wants internal vibration: bay by bay
  std::vector<std::size_t> rows;    ///< run once the lift is placed, in this order, one at a time
  Seconds run{};                    ///< each
  Seconds gap{};                    ///< from one to the next
  Seconds inserting{};              ///< from placed to where the last bay of a deck is inserted
  Seconds pause{};  ///< then wait before the next lift: motors are still being moved
  Pressure head;    ///< the greatest a row brings
  [[nodiscard]] Seconds takes() const {
    return place + inserting + (run + gap) * static_cast<double>(rows.size()) + pause;
  }
  /// When the row at a place of `rows` begins to run, from the first lift's start.
  [[nodiscard]] Seconds runs_at(std::size_t place_in_rows) const {
    return begins + place + gap / 2.0 + (run + gap) * static_cast<double>(place_in_rows);
  }
  /// When its last row rests.
  [[nodiscard]] Seconds rested() const { return begins + takes() - pause; }
};

/// What the planner guesses.
enum class PlanGuess { load, lift, sides, rise };
/// A guess that binds the plan, or that was changed so that there is one; in words.
struct GuessTold {
  PlanGuess guess = PlanGuess::load;
  bool changed = false;  ///< else it binds as it is: a figure of one's own may give a better plan
  Saying words;
};

struct PlannedPour {
  Plan plan;
  std::vector<MotorsMove> before;  ///< hung before the first lift
  std::vector<LiftStep> lifts;
  trade::VolumeRate placing;             ///< while a lift is placed
  Velocity rise;                         ///< the same, as it rises at the widest
  std::optional<Velocity> rise_allowed;  ///< none: the form bears the full liquid head
  Pressure pressure;                     ///< the method's at that rise, or the full liquid head
  bool method_holds = true;
  std::vector<LimitUse> uses;                    ///< the tightest first
  PlanLimit sets_rise = PlanLimit::rise_wished;  ///< what sets the pace
  Length spacing;                                ///< of motors along a row
  double force_share = 0;  ///< of a motor, over what its share of the face wants
  std::size_t motors_a_row = 0;
  std::size_t motors = 0;          ///< in all, leapfrogged
  std::size_t motors_unmoved = 0;  ///< if every row had its own
  Volume concrete;
  Volume load;  ///< the greatest to order; less than wished when it would grow old
  std::vector<PlannedLoad> loads;
  double trucks_an_hour = 0;  ///< while placing goes on, pauses counted
  std::size_t trucks = 0;     ///< in all
  Seconds joint_age{};        ///< the oldest joint when it is knitted
  Seconds sets{};             ///< from when concrete comes, the oldest of a load, to initial set
  Seconds duration{};         ///< first lift's start to the last row's rest
  bool insert_too = false;    ///< a thick section: internal vibration in every lift and bay
  Seconds waits{};            ///< all pauses together
  /// The least crew with no pause; none: there is none, or no number of hands is enough (then
  /// `motors_no_wait` may be).
  std::optional<int> hands_no_wait;
  std::optional<std::size_t> motors_no_wait;  ///< in all; where hands alone do not help
  std::vector<GuessTold> guesses;
  Saying forced;  ///< why guesses were changed: what the first ones came up against
};

/// Tries its own guesses otherwise (loads, lifts, sides, the rise; never what was given) before it
/// refuses. Errors: input (a number that makes no sense), refused (a limit forbids it: the text
/// says which, by how much, and what was tried).
Result<PlannedPour> plan_pour(const PlanWish& wish);

}  // namespace rb
