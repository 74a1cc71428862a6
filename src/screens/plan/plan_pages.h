// What stands on each page of a plan, and what a tap on it does.
#pragma once

#include <functional>
#include <vector>

#include "screens/entry/plan_tiles.h"

namespace rb::screens {

struct PlanTile {
  Tile tile{};
  std::function<void(PlanEdit&)> tapped{};
};

/// The tiles of the page shown.
std::vector<PlanTile> plan_tiles(const Say& say, const PlanEdit& edit);

/// The page's title: "W1 . bays".
std::string plan_page_title(const Say& say, const PlanEdit& edit);

/// The page one step back; none where that leads out of the plan.
std::optional<PlanEdit::Page> page_before(PlanEdit::Page page);

/// The guess this page shows, when it is open.
std::optional<OpenGuess> guess_shown(const PlanEdit& edit);
/// "bays W1, lifts W1".
std::string guesses_in_words(const Say& say, const PlanDraft& draft);

/// Whether what the page shows may be taken out of the plan; and doing it.
bool may_remove(const PlanEdit& edit);
void remove_shown(PlanEdit& edit);

}  // namespace rb::screens
