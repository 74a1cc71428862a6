// Looking at a pour: a face as a map, as it was at any moment; what was found and seen on it; the
// story of every spot and the taps behind every finding.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// The draft that leads to a finding's place and moment, and to the taps it rests on.
ReviewDraft review_of_finding(const PourState& state, const CheckReport& report,
                              std::size_t finding);

void draw_review_screen(Stage& stage, const Box& box, ReviewDraft& draft, const PourView& view);

}  // namespace rb::screens
