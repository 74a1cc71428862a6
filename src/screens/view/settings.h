// What a user may set about the screens. Kept by the program between starts.
#pragma once

#include <optional>

#include "base/ids.h"
#include "pour/plan/plan.h"
#include "screens/glass/scale.h"
#include "screens/glass/theme.h"
#include "screens/words/words.h"

namespace rb::screens {

enum class HandSide { right, left };

struct Settings {
  ThemeName theme = ThemeName::sun;
  Language language{};
  std::optional<Units> units{};  ///< none: as the pour's plan says
  double diagonal_inches = kDefaultDiagonalInches;
  HandSide rows_on = HandSide::right;  ///< where the run buttons are
  bool sound = true;                   ///< a tone for what newly needs a hand
  std::optional<Person> holder{};      ///< who holds the tablet; none: the plan's first foreman
  bool operator==(const Settings&) const = default;
};

/// Who holds the tablet: the one chosen, when this plan knows him by the same id, name and role
/// (plans number their people alike), else its first foreman. Null when the plan names no foreman.
const Person* holder_of(const Plan& plan, const std::optional<Person>& chosen);

}  // namespace rb::screens
