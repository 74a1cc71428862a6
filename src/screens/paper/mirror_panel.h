// The mirror: its light at the head of the Pour screen, and the panel to choose where it goes and
// to copy the book by hand.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Form and words; a tap on it opens the panel. Nothing where no mirror can be kept.
void draw_mirror_light(Stage& stage, const Box& box);

void draw_mirror(Stage& stage, const Box& box, MirrorDraft& draft);

/// What to photograph at the close: the short code of the book's head and its event's number.
/// False, and nothing drawn, while that is not known.
bool draw_head_code(Stage& stage, const Box& box);

/// While the panel is open the folders to choose from are looked for this often.
inline constexpr Seconds kLookForPlaces{2};

}  // namespace rb::screens
