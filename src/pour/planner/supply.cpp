#include "pour/planner/supply.h"

#include <algorithm>
#include <cmath>

#include "pour/outlook/set_clock.h"

namespace rb {

Supply supply_for(const PlanWish& wish, Volume concrete, Seconds duration) {
  Supply supply;
  supply.pace = quantity_of<trade::VolumeRate>(concrete.value() / duration.count());
  const Seconds time = wish.limits.load_age_max.value - wish.haul;
  supply.in_time = quantity_of<Volume>(supply.pace.value() * std::max(0.0, time.count()));
  supply.load = std::min(wish.load, concrete);
  if (supply.load > supply.in_time) {
    supply.load = std::floor(supply.in_time / kLoadStep + 1e-9) * kLoadStep;
  }
  supply.empties = Seconds{supply.load.value() / supply.pace.value()};
  return supply;
}

Seconds workable(const PlanWish& wish) {
  return planned_set(wish.mix, wish.concrete, SetSide::early) * wish.limits.plastic_share.value;
}

}  // namespace rb
