#include "pour/planner/wish_fault.h"

#include "trade/shape/bounds.h"

namespace rb {

std::optional<Error> fault_of(const PlanWish& w) {
  const double trucks = w.trucks_per_hour.value_or(1);
  auto fault = trade::outside(said("plan"),
                              {{said("length"), in_metres(w.length), 0.1, 500, "m"},
                               {said("height"), in_metres(w.height), 0.1, 50, "m"},
                               {said("thickness"), in_metres(w.thickness), 0.05, 10, "m"},
                               {said("bay"), in_metres(w.bay), 0.1, 500, "m"},
                               {said("initial set"), in_hours(w.mix.initial_set), 0.25, 96, "h"},
                               {said("concrete"), w.concrete.degrees, 0, 50, "degC"},
                               {said("load"), in_cubic_metres(w.load), 0.25, 50, "m3"},
                               {said("trucks an hour"), trucks, 0.01, 100, ""},
                               {said("haul"), in_minutes(w.haul), 0, 600, "min"},
                               {said("crew"), static_cast<double>(w.crew), 1, 100, ""}});
  if (fault || w.kind == ElementKind::deck) return fault;
  return trade::outside(said("plan"),
                        {{said("form rating"), in_kilopascals(w.form_rating), 1, 2000, "kPa"},
                         {said("rise wished"), in_metres_per_hour(w.rise_wished), 0.05, 30, "m/h"},
                         {said("motor's amps"), in_amperes(w.motor.amps), 0.01, 500, "A"},
                         {said("hang time"), in_minutes(w.hang_time), 0.1, 240, "min"}});
}

}  // namespace rb
