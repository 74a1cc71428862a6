#include "pour/planner/wish_fault.h"

#include "trade/shape/bounds.h"

namespace rb {

std::optional<Error> fault_of(const PlanWish& w) {
  if (w.kind == ElementKind::deck) {
    return Error{Error::Kind::input, "plan, kind", "a deck has no rows to leapfrog",
                 "Plan a wall or a column"};
  }
  const double trucks = w.trucks_per_hour.value_or(1);
  return trade::outside("plan",
                        {{"length", in_metres(w.length), 0.1, 500, "m"},
                         {"height", in_metres(w.height), 0.1, 50, "m"},
                         {"thickness", in_metres(w.thickness), 0.05, 10, "m"},
                         {"bay", in_metres(w.bay), 0.1, 500, "m"},
                         {"form rating", in_kilopascals(w.form_rating), 1, 2000, "kPa"},
                         {"rise wished", in_metres_per_hour(w.rise_wished), 0.05, 30, "m/h"},
                         {"initial set", in_hours(w.mix.initial_set), 0.25, 96, "h"},
                         {"concrete", w.concrete.degrees, 0, 50, "degC"},
                         {"motor's amps", in_amperes(w.motor.amps), 0.01, 500, "A"},
                         {"load", in_cubic_metres(w.load), 0.25, 50, "m3"},
                         {"trucks an hour", trucks, 0.01, 100, ""},
                         {"haul", in_minutes(w.haul), 0, 600, "min"},
                         {"crew", static_cast<double>(w.crew), 1, 100, ""},
                         {"hang time", in_minutes(w.hang_time), 0.1, 240, "min"}});
}

}  // namespace rb
