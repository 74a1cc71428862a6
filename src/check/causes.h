// What follows from what: a row that never ran leaves concrete under its dose and a joint unworked,
// and all three are one thing gone wrong. Inside this room.
#pragma once

#include "check/rule.h"

namespace rb {

/// Gives each finding the id of its cause (Finding::group): its own, or that of the finding it
/// follows from. Nothing is left out and no weight changes. The id names rule, place and event, so
/// that like findings of several bays of a lift share it.
void tell_causes(const Look& look, Findings& findings);

/// Whether it follows from another finding: a group is named for the rule of its cause.
bool follows(const Finding& f);

}  // namespace rb
