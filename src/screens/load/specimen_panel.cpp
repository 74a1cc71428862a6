#include "screens/load/specimen_panel.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr double kDay = 86400;

std::string broken_words(const Say& say, const SpecimenView& specimen) {
  if (!specimen.strength || !specimen.age_days) {
    return say(Word::specimen_taken, say.day(specimen.taken), say.clock_short(specimen.taken));
  }
  return say(Word::specimen_days, fmt::format("{:g}", *specimen.age_days),
             figure_text(Figure::broke_at, shown(*specimen.strength, say.units), say.units));
}

// Whole days are what specimens are mostly kept for; younger than one, nothing is guessed.
SpecimenDraft new_result(const SpecimenView& specimen, Moment at) {
  SpecimenDraft draft{.specimen = specimen.specimen, .at = at};
  const double days = std::round(in_seconds(between(specimen.taken, at)) / kDay);
  if (days >= 1) draft.age_days = days;
  return draft;
}

}  // namespace

std::vector<SpecimenId> specimens_typed(const std::string& text) {
  std::vector<SpecimenId> ids;
  std::string id;
  for (const char c : text + ' ') {
    if (c != ' ' && c != ',') {
      id += c;
    } else if (!id.empty()) {
      ids.emplace_back(std::exchange(id, {}));
    }
  }
  return ids;
}

std::string specimens_guessed(const TicketId& ticket, const PourView& view) {
  constexpr int kTaken = 3;
  std::string text;
  int found = 0;
  for (int i = 1; found < kTaken; ++i) {
    const SpecimenId id{fmt::format("{}-{}", ticket.text, i)};
    if (std::any_of(view.specimens.begin(), view.specimens.end(),
                    [&](const SpecimenView& taken) { return taken.specimen == id; })) {
      continue;
    }
    text += (found > 0 ? " " : "") + id.text;
    ++found;
  }
  return text;
}

void draw_specimens(Stage& stage, const Box& box, SpecimensDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, say(Word::specimen_title));
  const float tall = canvas.mm(18);
  const bool leads_on = stage.next.has_value();  // by what stands beside the panel
  const Pages pages = turn_pages(stage, in, view.specimens.size(), draft.page, "specimens", tall);
  if (stage.next && !leads_on) stage.open(AfterDraft{});  // the way back
  if (view.specimens.empty()) {
    canvas.text(say(Word::specimen_none), pages.room,
                {.colours = canvas.soft(), .down = Down::top, .lines = 3});
  }
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.specimens.size(); ++i) {
    const SpecimenView& specimen = view.specimens[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "specimen " + specimen.specimen.text,
                .text = specimen.specimen.text,
                .under = specimen.ticket.text + " \u00B7 " + broken_words(say, specimen),
                .look = specimen.strength ? Look::quiet : Look::act,
                .symbol = specimen.strength ? Symbol::check : Symbol::none,
                .free_text = true})) {
      stage.open(new_result(specimen, stage.tapped()));
    }
  }
}

void draw_specimen(Stage& stage, const Box& box, SpecimenDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  const float gap = canvas.gap();
  if (const auto typed = draw_typed(stage, box, draft.figure, draft.specimen.text)) {
    if (typed->value && typed->what == Figure::age_days) draft.age_days = *typed->value;
    if (typed->value && typed->what == Figure::broke_at) {
      draft.strength = strength_of(*typed->value, units);
    }
    return;
  }
  Box in = panel_with_title(stage, box, draft.specimen.text);
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  in.y1 = std::min(in.y1, in.y0 + canvas.mm(30));
  const auto cell = [&](int i, Figure what, const char* id, std::optional<double> value) {
    const Word title = figure_range(what, units).title;
    if (button(canvas, in.column(i, 2, gap),
               {.id = id,
                .text = value ? figure_text(what, *value, units) : say(title),
                .under = value ? say(title) : say(Word::not_measured),
                .look = value ? Look::act : Look::quiet,
                .symbol = value ? Symbol::check : Symbol::none})) {
      draft.figure = FigureEntry{.what = what, .guess = value};
    }
  };
  cell(0, Figure::age_days, "specimen age", draft.age_days);
  cell(1, Figure::broke_at, "specimen strength",
       draft.strength ? std::optional{shown(*draft.strength, units)} : std::nullopt);
  const PanelEnd end = keep_or_cancel(stage, foot, draft.age_days && draft.strength);
  if (end == PanelEnd::kept) {
    stage.keep(event::Specimen{draft.specimen, *draft.age_days, *draft.strength}, draft.at);
  }
  if (end != PanelEnd::open) stage.open(SpecimensDraft{});
}

}  // namespace rb::screens
