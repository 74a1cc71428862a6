// Events and findings in words.
#pragma once

#include <string>

#include "check/finding.h"
#include "pour/log/happening.h"
#include "screens/view/pour_view.h"
#include "screens/words/say.h"

namespace rb::screens {

/// "Run row R2 near", "W1: Top 1.35 m, bay 2".
std::string event_words(const Say& say, const Happening& what, Naming naming);

/// A group of findings by its key: "Under-dosed concrete, W1 2".
std::string finding_name(const Say& say, const std::string& key);
std::string row_name(const Say& say, const RowPlace& place, bool two_sides);

/// Title of a rule, in the user's language; one not known shows its id.
std::string rule_title(const Say& say, const std::string& rule);
/// "W1, lift 3, bay 2, row R4 far"
std::string finding_place(const Say& say, const Plan& plan, const Finding& finding);
/// A person's role in the screen's language, as written when it is none of ours.
std::string role_words(const Say& say, const std::string& role);
/// "06:14", or "06:14\u201306:31" of what lasted; empty of what has no time, a plan's fault.
std::string finding_time(const Say& say, const PourState& state, const Finding& finding);
/// "62 kPa, limit 60 kPa"; empty when nothing was measured.
std::string finding_figures(const Say& say, const Finding& finding);

}  // namespace rb::screens
