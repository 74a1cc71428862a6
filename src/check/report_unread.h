// A check's report with what could not be read of the pour.
#pragma once

#include <string>

#include "check/check.h"
#include "pour/log/unread.h"

namespace rb {

/// As to_json() of check.h; the fields `damaged` and `set_aside` list what was not judged.
std::string to_json(const PourState& state, const CheckReport& report, const Unread& unread);
/// The same for a person at a terminal; what is damaged stands first.
std::string to_text(const PourState& state, const CheckReport& report, const Unread& unread);

/// Of a pour whose plan is lost: no finding, and a word that this is no verdict.
std::string to_json(const PourWithoutPlan& pour);
std::string to_text(const PourWithoutPlan& pour);

}  // namespace rb
