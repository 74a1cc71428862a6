// The plan changed under way by touch: a person, a row's height, a thickness. What may change and
// what not is judged by pour/plan/amend.h and pour/log alone.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Whether letters are typed now: they want the taller box.
bool types_letters(const AmendDraft& draft);
void draw_amend(Stage& stage, const Box& box, AmendDraft& draft, const PourView& view,
                const Plan& plan);

}  // namespace rb::screens
