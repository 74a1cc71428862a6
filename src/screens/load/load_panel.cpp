// Where a load went: how much of it into which element, and how much back. What was not known as
// the ticket or the discharge was tapped is told as a correction of that tap.
#include <algorithm>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"
#include "screens/entry/told_later.h"
#include "screens/load/truck_panel.h"

namespace rb::screens {

namespace {

void keep_figure(Stage& stage, const LoadView& load, const LoadDraft& draft, Volume volume) {
  if (draft.part < load.parts.size()) {
    const ToldTap& told = load.parts[draft.part].told;
    Happening mended = told.what;
    if (auto* discharge = std::get_if<event::Discharge>(&mended)) discharge->volume = volume;
    keep_told_later(stage, told, mended, draft.at);
  } else if (load.entered) {
    Happening mended = load.entered->what;
    if (auto* truck = std::get_if<event::Truck>(&mended)) truck->returned = volume;
    keep_told_later(stage, *load.entered, mended, draft.at);
  }
}

std::string part_words(const Say& say, const LoadPart& part) {
  std::string words = say.clock_short(part.from);
  if (part.to) words += "\u2013" + say.clock_short(*part.to);
  return part.element ? part.element->text + " \u00B7 " + words : words;
}

}  // namespace

void draw_load(Stage& stage, const Box& box, LoadDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  const auto found = std::find_if(view.loads.begin(), view.loads.end(), [&](const LoadView& load) {
    return load.ticket == draft.ticket;
  });
  if (found == view.loads.end()) {  // taken back in the meantime
    stage.open(TrucksDraft{});
    return;
  }
  const LoadView& load = *found;
  if (const auto typed = draw_typed(stage, box, draft.figure, load.ticket.text)) {
    if (typed->value) keep_figure(stage, load, draft, volume_of(*typed->value, units));
    return;
  }
  std::string title = load.ticket.text;
  if (load.volume) title += " \u00B7 " + say.amount(rb::amount(*load.volume));
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, title);
  const float tall = canvas.mm(18);
  const std::size_t lines = load.parts.size() + (load.entered ? 1 : 0);
  const bool leads_on = stage.next.has_value();  // by what stands beside the panel
  const Pages pages = turn_pages(stage, in, lines, draft.page, "load", tall);
  if (stage.next && !leads_on) stage.open(TrucksDraft{});  // the way back leads to the trucks
  for (std::size_t i = pages.first; i < std::min(lines, pages.first + pages.lines); ++i) {
    const float top = pages.room.y0 + static_cast<float>(i - pages.first) * (tall + gap);
    const bool back = i == load.parts.size();
    const auto& volume = back ? load.returned : load.parts[i].volume;
    const bool named = back ? !load.entered->id.empty() : !load.parts[i].told.id.empty();
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = back ? "returned" : "part " + std::to_string(i + 1),
                .text = volume ? say.amount(rb::amount(*volume)) : say(Word::load_untold),
                .under = back ? say(Word::load_went_back) : part_words(say, load.parts[i]),
                .look = volume ? Look::quiet : Look::act,
                .symbol = Symbol::pencil,
                .enabled = !view.closed && named,
                .free_text = true})) {
      draft.part = i;
      draft.at = stage.tapped();
      draft.figure = FigureEntry{.what = back ? Figure::returned : Figure::part};
      if (volume) draft.figure->guess = shown(*volume, units);
    }
  }
}

}  // namespace rb::screens
