// The short panels of the Pour screen: each asks one thing and leads back.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_hold(Stage& stage, const Box& box, const HoldDraft& draft);
void draw_note(Stage& stage, const Box& box, const NoteDraft& draft, const PourView& view);
void draw_row(Stage& stage, const Box& box, const RowDraft& draft, const PourView& view);
void draw_more(Stage& stage, const Box& box, const PourView& view, const Plan& plan);
void draw_holder(Stage& stage, const Box& box, HolderDraft& draft, const Plan& plan);
void draw_close(Stage& stage, const Box& box, const PourView& view);
void draw_quit(Stage& stage, const Box& box);
void draw_elements(Stage& stage, const Box& box, ElementsDraft& draft, const PourView& view);
void draw_settings(Stage& stage, const Box& box);

}  // namespace rb::screens
