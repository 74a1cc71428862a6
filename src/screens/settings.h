// What a user may set about the screens. Kept by the program between starts.
#pragma once

#include <optional>

#include "pour/plan.h"
#include "screens/scale.h"
#include "screens/theme.h"
#include "screens/words.h"

namespace rb::screens {

enum class HandSide { right, left };

struct Settings {
  ThemeName theme = ThemeName::sun;
  Language language = Language::english;
  std::optional<Units> units{};  ///< none: as the pour's plan says
  double diagonal_inches = kDefaultDiagonalInches;
  HandSide rows_on = HandSide::right;  ///< where the run buttons are
  bool operator==(const Settings&) const = default;
};

}  // namespace rb::screens
