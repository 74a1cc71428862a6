// Letters to type with a glove: in the order of the alphabet, each key a full target.
#pragma once

#include <string>

#include "screens/stage.h"

namespace rb::screens {

/// Draws the keys and adds to `text`. Characters from a real keyboard come in through the drafts'
/// `typed_in` as well.
/// How many keys stand side by side in a width, none narrower than a target.
int keys_across(const Scale& scale, float width);
/// How tall a panel with a line of text and the keys must be.
float keyboard_height(const Scale& scale, float panel_width);

void draw_keyboard(Stage& stage, const Box& box, std::string& text);

/// Takes the last letter off, however many bytes it has.
void erase_letter(std::string& text);

/// A line of text with the keys, whatever it is for. Draws over `box` (which must be
/// keyboard_height() tall) and adds to `text`. `kept` only when there is something to keep.
PanelEnd draw_text_entry(Stage& stage, const Box& box, const std::string& title, std::string& text);

/// The dialog: the same, and what is done with the text.
void draw_typing(Stage& stage, const Box& box, TypeDraft& draft);

}  // namespace rb::screens
