// Letters to type with a glove: in the order of the alphabet, each key a full target.
#pragma once

#include <string>

#include "pour/plan/most.h"
#include "screens/entry/stage.h"

namespace rb::screens {

/// How many keys stand side by side in a width, none narrower than a target.
int keys_across(const Scale& scale, float width);
/// How tall a panel with a line of text and the keys must be.
float keyboard_height(const Scale& scale, float panel_width);

/// How long a text may become: no key adds past it.
struct TextBound {
  std::size_t letters = most::kTextLetters;
  std::size_t bytes = 4 * most::kTextLetters;
  [[nodiscard]] bool takes(const std::string& text, std::string_view more) const {
    return text.size() + more.size() <= bytes && letters_of(text) + letters_of(more) <= letters;
  }
};
inline constexpr TextBound kText{};
inline constexpr TextBound kName{most::kIdBytes, most::kIdBytes};  ///< of what becomes an id

/// What is typed: words, or the path of a folder, which tells small letters from capitals.
enum class Keys { words, path };

/// Draws the keys and adds to `text`. Characters from a real keyboard come in through the drafts'
/// `typed_in` as well.
void draw_keyboard(Stage& stage, const Box& box, std::string& text, const TextBound& bound,
                   Keys keys = Keys::words);

/// Takes the last letter off, however many bytes it has.
void erase_letter(std::string& text);

/// A line of text with the keys, whatever it is for. Draws over `box` (which must be
/// keyboard_height() tall) and adds to `text`. `kept` only when there is something to keep.
PanelEnd draw_text_entry(Stage& stage, const Box& box, const std::string& title, std::string& text,
                         const TextBound& bound = kText, Keys keys = Keys::words);

}  // namespace rb::screens
