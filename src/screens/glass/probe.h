// What a frame drew, for tests: every target with its place and every text with the colours it
// stands in and whether it fitted. Kept for the last frame only.
#pragma once

#include <string>
#include <vector>

#include "screens/glass/tap.h"
#include "screens/glass/theme.h"

namespace rb::screens {

struct SeenTarget {
  Target target{};
  std::string text{};  ///< the words on it, in reading order, one space between
  Box clip{};          ///< what it was cut to
};

struct SeenText {
  std::string text{};
  Box box{};   ///< the room the letters took
  Box room{};  ///< the room they had
  Colour ink{}, ground{};
  bool fits = true;
  bool free_text = false;  ///< written by a user: may be shortened with an ellipsis
};

struct Probe {
  std::vector<SeenTarget> targets{};
  std::vector<SeenText> texts{};
  void clear() {
    targets.clear();
    texts.clear();
  }
};

}  // namespace rb::screens
