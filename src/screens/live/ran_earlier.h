// A run nobody logged while it ran, entered afterwards: from when, how long, and why it comes late.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_ran_earlier(Stage& stage, const Box& box, RanEarlierDraft& draft, const PourView& view);
/// Keeps the run with its reason, typed or chosen.
void keep_ran_earlier(Stage& stage, const RanEarlierDraft& draft, const std::string& why,
                      std::optional<event::Chosen> chosen = {});

}  // namespace rb::screens
