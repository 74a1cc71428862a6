// What happened at each spot of a face, in the reader's words: told for the middles of a grid of
// squares, so that a page that reckons nothing can show it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "pour/log/state.h"
#include "words/sentence.h"

namespace rb {

/// "Dose", "95 s (at least 90 s)".
using StoryLine = std::pair<std::string, std::string>;

struct SpotStories {
  std::size_t across = 0, up = 0;  ///< squares of the grid, from the left, from the base
  std::vector<StoryLine> lines;    ///< each once
  std::vector<std::vector<std::size_t>> stories;  ///< into `lines`, each once
  std::vector<std::size_t> at;  ///< of each square its story, row by row from the base
};

/// By all that was logged, asked at the pour's last event. Squares are at most half a metre wide
/// and a quarter high, up to 120 across and 40 up.
SpotStories spot_stories(const PourState& state, std::size_t element, Side side,
                         const Voice& voice);

}  // namespace rb
