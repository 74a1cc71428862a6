// The record of a day made by touch: which day, where to, in which forms; then where it lies.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_record(Stage& stage, const Box& box, RecordDraft& draft);

}  // namespace rb::screens
