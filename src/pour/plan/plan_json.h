// Plans as JSON, as the event that opens a pour holds them.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "pour/plan/most.h"
#include "pour/plan/plan.h"

namespace rb {

/// Reads a plan (a JSON object's text). Every number is checked for sign, finiteness and size,
/// every name for being unique, every row and opening for lying on its element.
Result<Plan> parse_plan(std::string_view json, const Saying& where, Bounds bounds = Bounds::kept);
std::string to_json(const Plan& plan, bool indented = false);

}  // namespace rb
