// A fresh test of a truck's concrete and the specimens taken of it: only what was measured is kept.
#include <algorithm>
#include <cmath>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"
#include "screens/load/specimen_panel.h"
#include "screens/load/truck_panel.h"

namespace rb::screens {

namespace {

std::string specimens_in_words(const std::vector<SpecimenId>& specimens) {
  std::string words;
  for (const SpecimenId& id : specimens) words += (words.empty() ? "" : " ") + id.text;
  return words;
}

// Their ids are typed, from a guess: as they are marked.
void draw_taken(Stage& stage, const Box& cell, const TestDraft& draft, const PourView& view) {
  const Say& say = stage.say;
  const bool any = !draft.specimens.empty();
  if (!button(stage.canvas, cell,
              {.id = "specimens",
               .text = any ? specimens_in_words(draft.specimens) : say(Word::test_specimens),
               .under = say(any ? Word::test_specimens : Word::specimens_none_taken),
               .look = any ? Look::act : Look::quiet,
               .symbol = any ? Symbol::check : Symbol::pencil,
               .free_text = true})) {
    return;
  }
  TypeDraft type{
      .use = TypeDraft::Use::specimens,
      .text = any ? specimens_in_words(draft.specimens) : specimens_guessed(draft.ticket, view),
      .at = draft.at};
  type.test = draft;
  stage.drafts.figures = true;
  stage.open(std::move(type));
}

}  // namespace

void draw_test(Stage& stage, const Box& box, TestDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  const float gap = canvas.gap();
  if (const auto typed = draw_typed(stage, box, draft.figure, draft.ticket.text)) {
    if (typed->value) {
      const double value = *typed->value;
      const Figure what = typed->what;
      if (what == Figure::slump) draft.slump = small_length_of(value, units);
      if (what == Figure::concrete_temp) draft.temp = temperature_of(value, units);
      if (what == Figure::air) draft.air = value;
      if (what == Figure::density) draft.density = density_of(value, units);
    }
    return;
  }
  Box in = panel_with_title(stage, box, say(Word::test_title, draft.ticket.text));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(26));
  struct Part {
    Figure what;
    std::string id;
    std::optional<double> value;
  };
  const Part parts[] = {
      {Figure::slump, "slump",
       draft.slump ? std::optional{shown(*draft.slump, units)} : std::nullopt},
      {Figure::concrete_temp, "temp",
       draft.temp ? std::optional{shown(*draft.temp, units)} : std::nullopt},
      {Figure::air, "air", draft.air},
      {Figure::density, "density",
       draft.density ? std::optional{shown(*draft.density, units)} : std::nullopt}};
  bool any = !draft.specimens.empty();
  int i = 0;
  for (const Part& part : parts) {
    any = any || part.value;
    const Box cell = in.line(i / 2, 3, gap).column(i % 2, 2, gap);
    ++i;
    if (button(
            canvas, cell,
            {.id = part.id,
             .text = part.value ? figure_text(part.what, *part.value, units)
                                : say(figure_range(part.what, units).title),
             .under = say(part.value ? figure_range(part.what, units).title : Word::not_measured),
             .look = part.value ? Look::act : Look::quiet,
             .symbol = part.value ? Symbol::check : Symbol::none})) {
      draft.figure = FigureEntry{.what = part.what, .guess = part.value};
    }
  }
  draw_taken(stage, in.line(2, 3, gap), draft, view);
  const PanelEnd end = keep_or_cancel(stage, foot, any);
  if (end == PanelEnd::kept) {
    stage.keep(event::Test{draft.ticket, draft.slump, draft.temp, draft.air, draft.density,
                           draft.specimens},
               draft.at);
  }
  if (end != PanelEnd::open) stage.open(TrucksDraft{});
}

}  // namespace rb::screens
