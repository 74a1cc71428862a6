// Looking for a pour in a long list.
#pragma once

#include "screens/entry/stage.h"
#include "screens/view/pours_view.h"

namespace rb::screens {

/// Letters for a name, a site or a day.
void draw_find(Stage& stage, const Box& box, FindDraft& draft);

/// Asks the program for a part of the list when what is there does not hold it: lines from `first`
/// on, of the pours that what is looked for finds.
void want_pours(Stage& stage, const PoursPart& part, std::size_t there, std::size_t first,
                std::size_t lines);

}  // namespace rb::screens
