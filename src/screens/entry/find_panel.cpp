#include "screens/entry/find_panel.h"

#include <algorithm>

#include "screens/entry/keyboard.h"

namespace rb::screens {

void draw_find(Stage& stage, const Box& box, FindDraft& draft) {
  const PanelEnd end = draw_text_entry(stage, box, stage.say(Word::find_title), draft.text);
  if (end == PanelEnd::open) return;
  stage.close();
  if (end == PanelEnd::cancelled) return;
  stage.drafts.pours_find = draft.text;
  stage.drafts.pours_page = 0;
}

void want_pours(Stage& stage, const PoursPart& part, std::size_t there, std::size_t first,
                std::size_t lines) {
  if (part.coming) return;
  const bool same = part.find == stage.drafts.pours_find;
  const std::size_t end = std::min(first + lines, part.total);
  if (same && (first >= part.total || (first >= part.first && end <= part.first + there))) return;
  stage.intents.emplace_back(ShowPours{stage.drafts.pours_find, first, lines});
}

}  // namespace rb::screens
