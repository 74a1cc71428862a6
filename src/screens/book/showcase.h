// Every screen and panel by name, so that pictures and tests can go through all of them.
#pragma once

#include <span>
#include <string_view>

#include "pour/log/state.h"
#include "screens/entry/drafts.h"

namespace rb::screens {

struct ShowcaseScreen {
  std::string_view name;
  bool of_pour = true;  ///< false: the list of pours and what opens over it
  Drafts (*drafts)(const PourState& state);
};

std::span<const ShowcaseScreen> showcase();
const ShowcaseScreen* find_screen(std::string_view name);

}  // namespace rb::screens
