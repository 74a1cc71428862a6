// A list with its turning buttons at its side, where there is no height for a foot. Inside this
// room.
#pragma once

#include <string>

#include "screens/entry/stage.h"

namespace rb::screens {

struct SidePages {
  Box room;               ///< for the lines of this page
  std::size_t first = 0;  ///< of them in the list
  std::size_t lines = 0;
};

/// The buttons stand one over the other where there is height for it, else side by side; none where
/// all lines fit. `page` is kept in range.
SidePages side_pages(Stage& stage, const Box& box, std::size_t count, int& page,
                     const std::string& id, float tall, float gap);

}  // namespace rb::screens
