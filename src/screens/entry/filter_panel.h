// What a list of taps or findings shows: by row, lift, person, late, corrected.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Opens the filter; tells what is let through.
void filter_button(Stage& stage, const Box& box, FilterDraft& draft, const PourView& view);

/// The filter over the list's room, while it is being set; false when it is not.
bool draw_filter(Stage& stage, const Box& box, FilterDraft& draft, const PourView& view);

}  // namespace rb::screens
