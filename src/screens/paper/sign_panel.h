// Signing by touch: who, as what, with which verdict, and the PIN; a key of one's own is made here
// too, with a witness of another role. What comes of a PIN is worked out by the program.
#pragma once

#include "screens/entry/stage.h"
#include "screens/view/sign_view.h"

namespace rb::screens {

void draw_sign(Stage& stage, const Box& box, SignDraft& draft, const SignView& view);

}  // namespace rb::screens
