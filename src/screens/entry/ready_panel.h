// The walk-down on the glass: a line a point, OK or NOT OK, a note to what is not.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_ready(Stage& stage, const Box& box, ReadyDraft& draft, const PourView& view);

/// Until a lift was started the walk-down is offered beside its start. Draws the offer and gives
/// back the room left over.
Box offer_ready(Stage& stage, const Box& box, const PourView& view);

}  // namespace rb::screens
