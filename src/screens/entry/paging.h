// Long lists a page at a time: two big buttons, no dragging with wet gloves.
#pragma once

#include <string>

#include "screens/entry/stage.h"

namespace rb::screens {

/// How tall a line of a list is whose buttons stand beside its words.
inline constexpr double kListLineMm = 18.5;

/// How many target-high lines with gaps fit in a height.
std::size_t lines_in(const Canvas& canvas, float height);

struct Pages {
  Box room;               ///< for the lines of this page
  std::size_t first = 0;  ///< of them in the list
  std::size_t lines = 0;
  Box beside{};  ///< of one more button beside the way back, where it was asked for
};

/// Draws the turning buttons at the foot of a box when the list needs them, else a way back alone.
/// `page` is kept in range. Lines are `tall` pixels (0 = a target's height).
Pages turn_pages(Stage& stage, const Box& box, std::size_t count, int& page, const std::string& id,
                 float tall = 0, bool beside = false);

/// A panel over the work area with its title at the top; returns the room inside. Used by every
/// dialog; the way back is the dialog's own.
Box panel_with_title(Stage& stage, const Box& box, const std::string& title);

/// The same with the way back beside the title: for dialogs that need all the height there is.
/// `beside`, when asked for, becomes the room of one more button at the title's other side.
Box panel_with_back(Stage& stage, const Box& box, const std::string& title, Box* beside = nullptr);

/// The two ways out of a panel that asks for something, side by side.
PanelEnd keep_or_cancel(Stage& stage, const Box& foot, bool may_keep);

/// The button that leads back; true when tapped, and the dialog is then closed.
bool back_button(Stage& stage, const Box& box, Word text = Word::back);

}  // namespace rb::screens
