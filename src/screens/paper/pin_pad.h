// The pad for a PIN: its digits are never drawn, only how many they are.
#pragma once

#include <string>

#include "base/secret.h"
#include "screens/entry/stage.h"

namespace rb::screens {

/// What stands beside the keys.
struct PinBeside {
  std::string title, says;
  std::string doubt{};  ///< told as something to mend
  Word keep = Word::keep;
  std::size_t least = 6;  ///< digits, before it may be kept
};
PanelEnd draw_pin_pad(Stage& stage, const Box& box, Secret& pin, const PinBeside& beside);

}  // namespace rb::screens
