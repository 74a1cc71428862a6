// What `risebook plan` is asked with: every option with its unit, its default where an honest one
// exists, and where that comes from. One table makes the options, reads them and tells what was
// taken for granted.
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "pour/planner/planner.h"

namespace rb {

struct PlanInput {
  const char* name;      ///< without the dashes
  const char* what;      ///< help, with an example of the unit
  const char* fallback;  ///< "": must be given, or may stay away when `optional`
  const char* source;    ///< where the fallback comes from
  bool optional = false;
};
std::span<const PlanInput> plan_inputs();

using PlanTexts = std::map<std::string, std::string>;  ///< by name; empty = not given

struct PlanRequest {
  PlanWish wish;
  Units units = Units::si;
  std::string site, name, pour, by;
  std::vector<const PlanInput*> taken;  ///< fallbacks used
};

/// Errors name the option, what was wrong and the units it takes.
Result<PlanRequest> read_plan_request(const PlanTexts& given);

}  // namespace rb
