// The line that is always there: what needs a hand now; behind it what is open, dimmed; green only
// where nothing is.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// How many of each severity were found.
std::string severity_words(const Say& say, const PourView& view);

void draw_attention(Stage& stage, const Box& box, const PourView& view, const Plan& plan);

/// The same in a word or two, for a panel that lies over it.
Covered covered_banner(const Stage& stage, const PourView& view, const Plan& plan);

}  // namespace rb::screens
