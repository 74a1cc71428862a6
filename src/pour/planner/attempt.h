// One attempt at a plan, just as it is wished. Inside this room.
#pragma once

#include <map>
#include <utility>

#include "pour/planner/planner.h"
#include "pour/planner/supply.h"
#include "trade/motors/sizing.h"

namespace rb {

/// Layouts found, so that attempts that differ in other things find them once. For one wish, whose
/// deepest lift alone may vary.
class Sizings {
 public:
  const Result<trade::Sizing>& of(const trade::SizingCase& c, trade::Leapfrog leapfrog);

 private:
  std::map<std::pair<double, trade::Leapfrog>, Result<trade::Sizing>> known_;
};

/// Errors as plan_pour; no guess is varied, and the plan is not yet held to its reader.
Result<PlannedPour> attempt(const PlanWish& wish, Sizings& sizings, LastLoad last);

}  // namespace rb
