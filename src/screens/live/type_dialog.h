// A text typed with the keys, and what is done with it: a note, a hold, a reason, a ticket.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_typing(Stage& stage, const Box& box, TypeDraft& draft);

}  // namespace rb::screens
