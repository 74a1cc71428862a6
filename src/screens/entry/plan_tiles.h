// A page of a plan as tiles: what stands, under it what it is. Tapping one changes it.
#pragma once

#include <string>
#include <vector>

#include "screens/entry/stage.h"

namespace rb::screens {

struct Tile {
  std::string id{};
  std::string value{};
  std::string label{};
  bool guessed = false;    ///< marked, to be confirmed
  bool free_text = false;  ///< a user wrote the value
  Symbol symbol = Symbol::none;
  Look look = Look::quiet;
};

/// Draws the tiles in columns, a page at a time where they are many (`turn` is kept in range). The
/// index of the one tapped, or -1.
int draw_tiles(Stage& stage, const Box& box, const std::vector<Tile>& tiles, int columns,
               int& turn);

}  // namespace rb::screens
