// What the pages of a plan tell of its open guesses.
#include <algorithm>

#include "screens/plan/plan_pages.h"

namespace rb::screens {

std::optional<OpenGuess> guess_shown(const PlanEdit& edit) {
  std::optional<OpenGuess> shown;
  if (edit.page == PlanEdit::Page::bays) shown = OpenGuess{Guessed::bays, edit.of};
  if (edit.page == PlanEdit::Page::lifts) shown = OpenGuess{Guessed::lifts, edit.of};
  if (edit.page == PlanEdit::Page::rows) shown = OpenGuess{Guessed::rows, edit.of};
  if (edit.page == PlanEdit::Page::mix) shown = OpenGuess{Guessed::mix, 0};
  if (!shown) return {};
  const auto open = open_guesses(edit.draft);
  return std::find(open.begin(), open.end(), *shown) == open.end() ? std::nullopt : shown;
}

std::string guesses_in_words(const Say& say, const PlanDraft& draft) {
  std::string words;
  for (const OpenGuess& guess : open_guesses(draft)) {
    if (!words.empty()) words += ", ";
    switch (guess.what) {
      case Guessed::name:
        words += say(Word::plan_name);
        continue;
      case Guessed::mix:
        words += say(Word::plan_mix);
        continue;
      case Guessed::bays:
        words += say(Word::plan_bays);
        break;
      case Guessed::lifts:
        words += say(Word::plan_lifts);
        break;
      case Guessed::rows:
        words += say(Word::plan_rows);
        break;
    }
    words += " " + draft.plan.elements[guess.element].id.text;
  }
  return words;
}

}  // namespace rb::screens
