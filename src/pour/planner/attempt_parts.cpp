#include "pour/planner/attempt_parts.h"

#include <algorithm>

namespace rb {

Error refused(const char* limit, Saying what, Saying remedy) {
  return {Error::Kind::refused, inside(said("plan"), limit), std::move(what), std::move(remedy)};
}

std::optional<Error> temperature_fault(const PlanWish& wish) {
  const Limits& limits = wish.limits;
  const bool cold = wish.concrete < limits.temp_min.value;
  if (!cold && wish.concrete <= limits.temp_max.value) return std::nullopt;
  return refused("temperature",
                 {cold ? said("concrete at {temp} is below the {limit} it may be placed at")
                       : said("concrete at {temp} is above the {limit} it may be placed at"),
                  {{"temp", amount(wish.concrete)},
                   {"limit", amount(cold ? limits.temp_min.value : limits.temp_max.value)}}},
                 said("Warm or cool the mix, wait, or ask the engineer for another limit"));
}

Seconds sets_from_coming(const PlanWish& wish, const Supply& supply) {
  const Seconds may = std::max(Seconds{}, wish.limits.load_age_max.value - wish.haul);
  return std::max(Seconds{}, workable(wish) - wish.haul - std::min(supply.longest, may));
}

std::optional<Error> put_loads(PlannedPour& planned, const PlanWish& wish, const Supply& supply) {
  const Seconds time = wish.limits.load_age_max.value - wish.haul;
  if (!supply.parted || supply.longest > time) {
    const Volume least = std::min(wish.given.load ? wish.load : kLeastLoad, planned.concrete);
    return refused(
        "load-age",
        {said("loads are {haul} old when they come; in the {left} left of {limit} only {volume} "
              "can be placed, and a load is {least} at the least"),
         {{"haul", amount(wish.haul, Measure::age)},
          {"left", amount(std::max(Seconds{}, time), Measure::age)},
          {"limit", amount(wish.limits.load_age_max.value, Measure::age)},
          {"volume", amount(supply.in_time), Rounding::down},
          {"least", amount(least)}}},
        said("Give a load of your own, place faster, find a nearer plant, or ask for a longer "
             "limit and a mix that bears it"));
  }
  planned.loads = supply.loads;
  planned.trucks = planned.loads.size();
  for (const PlannedLoad& load : planned.loads) planned.load = std::max(planned.load, load.volume);
  planned.trucks_an_hour =
      trade::in_cubic_metres_per_hour(supply.pace) / in_cubic_metres(planned.load);
  planned.uses.push_back(
      {PlanLimit::load_age, (wish.haul + supply.longest) / wish.limits.load_age_max.value});
  return std::nullopt;
}

}  // namespace rb
