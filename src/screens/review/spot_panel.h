// A spot's story in words, and drawn: for every screen that shows a face.
#pragma once

#include <string>
#include <vector>

#include "screens/entry/stage.h"
#include "screens/view/spot_view.h"

namespace rb::screens {

/// One line of it; what is wrong is told in capitals, with a sign.
struct SpotLine {
  std::string text{};
  bool wrong = false;
};
/// Where it is, as a heading.
std::string spot_title(const Say& say, const SpotView& view);
/// In the order of a spot's life.
std::vector<SpotLine> spot_lines(const Say& say, const SpotView& view, Naming naming);

/// The story, a page at a time where the room is short.
void draw_spot(Stage& stage, const Box& box, const SpotView& view, Naming naming, int& page);

}  // namespace rb::screens
