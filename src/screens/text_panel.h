// A line of text typed on the screen's keys: the panel alone, whatever it is for.
#pragma once

#include <string>

#include "screens/stage.h"

namespace rb::screens {

enum class TextEnd { open, cancelled, kept };

/// Draws the panel over `box` (which must be keyboard_height() tall) and adds to `text`. `kept`
/// only when there is something to keep.
TextEnd draw_text_entry(Stage& stage, const Box& box, const std::string& title, std::string& text);

}  // namespace rb::screens
