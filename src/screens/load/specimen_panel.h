// Specimens broken: which one, how old it was and at what it broke.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_specimens(Stage& stage, const Box& box, SpecimensDraft& draft, const PourView& view);
void draw_specimen(Stage& stage, const Box& box, SpecimenDraft& draft);

/// Ids with blanks or commas between, as they are typed for the specimens of a test.
std::vector<SpecimenId> specimens_typed(const std::string& text);
/// Three more of a load, none of which was taken before: "7143-1 7143-2 7143-3".
std::string specimens_guessed(const TicketId& ticket, const PourView& view);

}  // namespace rb::screens
