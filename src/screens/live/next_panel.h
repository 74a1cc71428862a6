// What next, from the plan: the rows to run now and the motors to move, as a card on the Pour
// screen and as a panel where each is one tap.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// An open joint against the clock, in words: "knit by 08:37, 1 h 4 min left: bay 2".
std::string knit_words(const Say& say, const PourView& view, const KnitView& knit);

/// Two lines; a tap opens the panel.
void draw_next_card(Stage& stage, const Box& box, const PourView& view);

void draw_next(Stage& stage, const Box& box, NextDraft& draft, const PourView& view);

}  // namespace rb::screens
