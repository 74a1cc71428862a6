#include "pour/planner/wish_fault.h"

#include "trade/shape/bounds.h"

namespace rb {

std::optional<Error> fault_of(const PlanWish& w) {
  if (w.kind == ElementKind::deck) {
    return Error{Error::Kind::input, inside(said("plan"), "kind"),
                 said("a deck is worked by internal vibrators from above, bay by bay; rows on a "
                      "form, which are what is planned here, do nothing for it"),
                 said("Plan a wall or a column; enter a deck's bays and lifts by hand")};
  }
  const double trucks = w.trucks_per_hour.value_or(1);
  return trade::outside(said("plan"),
                        {{said("length"), in_metres(w.length), 0.1, 500, "m"},
                         {said("height"), in_metres(w.height), 0.1, 50, "m"},
                         {said("thickness"), in_metres(w.thickness), 0.05, 10, "m"},
                         {said("bay"), in_metres(w.bay), 0.1, 500, "m"},
                         {said("form rating"), in_kilopascals(w.form_rating), 1, 2000, "kPa"},
                         {said("rise wished"), in_metres_per_hour(w.rise_wished), 0.05, 30, "m/h"},
                         {said("initial set"), in_hours(w.mix.initial_set), 0.25, 96, "h"},
                         {said("concrete"), w.concrete.degrees, 0, 50, "degC"},
                         {said("motor's amps"), in_amperes(w.motor.amps), 0.01, 500, "A"},
                         {said("load"), in_cubic_metres(w.load), 0.25, 50, "m3"},
                         {said("trucks an hour"), trucks, 0.01, 100, ""},
                         {said("haul"), in_minutes(w.haul), 0, 600, "min"},
                         {said("crew"), static_cast<double>(w.crew), 1, 100, ""},
                         {said("hang time"), in_minutes(w.hang_time), 0.1, 240, "min"}});
}

}  // namespace rb
