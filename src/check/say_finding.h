// The words of a finding, from its data: one place for screen, record, JSON and terminal.
#pragma once

#include <string>

#include "check/check.h"

namespace rb {

/// "W1 lift 5: rose 2.40 m/h over the worst 30 min; limit 1.80 m/h". The names a sentence may use
/// besides the finding's own facts: element, lift, bay, side, row, ticket, inverter, measured,
/// limit. Measured and limit are rounded away from each other, so that what is over never looks
/// within.
std::string sentence(const Finding& finding, const Plan& plan, const Voice& voice);

/// "plan: form_rating_kpa", "default: ASTM C94, ...".
std::string source_text(const Source& source, const Voice& voice);

/// What to do.
std::string advice_text(const Finding& finding, const Voice& voice);

/// "62 s", with the rounding that belongs to it beside its limit.
std::string measured_text(const Finding& finding, const Voice& voice);
std::string limit_text(const Finding& finding, const Voice& voice);

/// What was not judged, as a sentence.
std::string sentence(const NotJudged& gap, const Plan& plan, const Voice& voice);

}  // namespace rb
