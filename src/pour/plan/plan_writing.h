// What is written of a plan, and the fields of it that this version does not know. Inside this
// room.
#pragma once

#include "pour/plan/json_fields.h"
#include "pour/plan/plan.h"

namespace rb {

/// All of a plan that this version knows.
Json known_json(const Plan& plan);

/// What stands in the text that was read and not in what is written of the plan: unknown fields,
/// wherever they are, told so that put_back() finds their place again.
Json left_over(const Json& read, const Json& written);
/// Puts them back; those whose place is gone are left out.
void put_back(Json& written, const Json& rest);
/// How much of a text that is.
std::size_t bytes_left(const Json& rest);
/// The first field that something is left over in.
std::string first_left(const Json& rest);

}  // namespace rb
