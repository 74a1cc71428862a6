// Plans a pour: from an element, a kind of motor and the limits, the rows and what hangs where, the
// pace, and a run sheet lift by lift. The plan it gives is one a pour can be opened with; following
// the run sheet keeps every limit the planner knows. A first plan for people who know the site to
// mend: the form designer agrees to vibrators on the form, a licensed electrician to the feed.
#pragma once

#include <optional>
#include <vector>

#include "pour/plan.h"

namespace rb {

struct PlanWish {
  ElementId element{"E1"};
  ElementKind kind = ElementKind::wall;  ///< a deck is refused: its surface is worked, not its form
  Length length, height, thickness;
  Length bay = metres(3.0);  ///< bays are about this long
  Pressure form_rating;
  MassPerArea form_mass;
  std::optional<Velocity> rise_limit;  ///< the form designer's own
  Velocity rise_wished;
  Length deepest_lift = metres(0.5);
  bool both_sides = false;

  Mix mix;
  Celsius concrete{20};  ///< as it will come
  trade::PressureMethod method = trade::PressureMethod::aci347;

  MotorType motor;
  Length reach_x, reach_z;
  std::optional<std::size_t> motors_at_hand;
  Potential volts;
  std::optional<Current> inverter_amps;  ///< none: no inverters are planned
  std::optional<Cable> cable;

  Volume load;
  std::optional<double> trucks_per_hour;  ///< that can come; none: as many as it takes
  Seconds haul{};                         ///< batched to discharge begun

  int crew = 2;         ///< hands that hang motors
  Seconds hang_time{};  ///< one of them takes one motor down and hangs it again
  Limits limits;
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
};
const char* to_text(PlanLimit limit);

/// How much of a limit the plan uses: 1 is all of it.
struct LimitUse {
  PlanLimit limit = PlanLimit::rise_wished;
  double share = 0;
  bool operator==(const LimitUse&) const = default;
};

/// Motors go from one row to another of the same side (or, from none, up from the ground).
struct MotorsMove {
  std::optional<std::size_t> from;  ///< index into the element's rows
  std::size_t to = 0;
  Seconds takes{};
};

struct LiftStep {
  int lift = 0;
  Length bottom, top;
  Volume concrete;
  Seconds place{};  ///< placing it
  /// Begun when the lift begins; what does not fit until they are needed is done in a pause.
  std::vector<MotorsMove> moves;
  std::vector<std::size_t> rows;  ///< run once the lift is placed, in this order, one at a time
  Seconds run{};                  ///< each
  Seconds gap{};                  ///< from one to the next
  Seconds pause{};                ///< then wait before the next lift: motors are still being moved
  Pressure head;                  ///< the greatest a row brings
  [[nodiscard]] Seconds takes() const {
    return place + (run + gap) * static_cast<double>(rows.size()) + pause;
  }
};

struct PlannedPour {
  Plan plan;
  std::vector<MotorsMove> before;  ///< hung before the first lift
  std::vector<LiftStep> lifts;
  Velocity rise;                         ///< while a lift is placed
  std::optional<Velocity> rise_allowed;  ///< none: the form bears the full liquid head
  Pressure pressure;                     ///< the method's at that rise, or the full liquid head
  bool method_holds = true;
  std::vector<LimitUse> uses;  ///< the tightest first
  PlanLimit sets_rise = PlanLimit::rise_wished;
  Length spacing;          ///< of motors along a row
  double force_share = 0;  ///< of a motor, over what its share of the face wants
  std::size_t motors_a_row = 0;
  std::size_t motors = 0;          ///< in all, leapfrogged
  std::size_t motors_unmoved = 0;  ///< if every row had its own
  Volume concrete;
  Volume load;                ///< to order; less than wished when it would grow old
  double trucks_an_hour = 0;  ///< while placing goes on, pauses counted
  std::size_t trucks = 0;     ///< in all
  Seconds joint_age{};        ///< the oldest joint when it is knitted
  Seconds sets{};             ///< initial set at the concrete's temperature
  Seconds duration{};         ///< first lift's start to the last row's rest
  bool insert_too = false;    ///< a thick section: internal vibration in every lift and bay
};

/// Errors: input (a number that makes no sense), refused (a limit forbids it: the text says which,
/// and by how much).
Result<PlannedPour> plan_pour(const PlanWish& wish);

}  // namespace rb
