#include "screens/entry/insert_panel.h"

#include <algorithm>
#include <array>

#include "screens/entry/figure_pad.h"
#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr int kGroups = 5;

// None: not told.
std::optional<double> figure_of(const event::Insert& what, Figure figure, Units units) {
  if (figure == Figure::points) return what.points;
  if (figure == Figure::heads) return what.heads;
  if (figure == Figure::spacing) return shown(what.spacing, units);
  if (figure == Figure::depth) return shown(what.depth_below, units);
  return in_seconds(what.each);
}

void put(event::Insert& what, Figure figure, double value, Units units) {
  if (figure == Figure::spacing) what.spacing = small_length_of(value, units);
  if (figure == Figure::depth) what.depth_below = small_length_of(value, units);
  if (figure == Figure::each) what.each = seconds(value);
  if (figure == Figure::points) what.points = static_cast<int>(value);
  if (figure == Figure::heads) what.heads = static_cast<int>(value);
}

void draw_groups(Stage& stage, const Box& line, event::Insert& what) {
  Canvas& canvas = stage.canvas;
  Box in = line;
  const Box label = in.cut_left(std::max(canvas.scale().target(), canvas.mm(20)), canvas.gap());
  canvas.text(stage.say(Word::insert_group), label,
              {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2});
  for (int i = 0; i < kGroups; ++i) {
    const bool on = what.group == i + 1;
    if (button(canvas, in.column(i, kGroups, canvas.gap()),
               {.id = "group " + std::to_string(i + 1),
                .text = std::to_string(i + 1),
                .look = on ? Look::act : Look::quiet,
                .symbol = on ? Symbol::check : Symbol::none,
                .symbol_above = true})) {
      what.group = i + 1;
    }
  }
}

void draw_figures(Stage& stage, const Box& line, InsertDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Units units = stage.say.units;
  int i = 0;
  constexpr std::array kFigures{Figure::spacing, Figure::each, Figure::depth, Figure::points,
                                Figure::heads};
  for (const Figure figure : kFigures) {
    const auto value = figure_of(draft.what, figure, units);
    const FigureRange range = figure_range(figure, units);
    if (button(canvas, line.column(i, static_cast<int>(kFigures.size()), canvas.gap()),
               {.id = "figure " + std::to_string(i),
                .text = value ? figure_text(figure, *value, units) : "\u2013",
                .under = stage.say(range.title),
                .face = Face::title})) {
      draft.figure = FigureEntry{.what = figure, .guess = value};
    }
    ++i;
  }
}

}  // namespace

InsertDraft new_insert(const PourView& view, Moment at) {
  InsertDraft draft{.at = at};
  if (view.insert.last) {
    draft.what = *view.insert.last;
  } else {
    draft.what = view.insert.usual;
  }
  draft.what.element = view.element_id;
  draft.what.lift = view.insert.lift;
  if (draft.what.bay && static_cast<std::size_t>(*draft.what.bay) > view.elevation.bays.size()) {
    draft.what.bay.reset();
  }
  return draft;
}

void draw_insert(Stage& stage, const Box& box, InsertDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  const float gap = canvas.gap();
  if (const auto typed = draw_typed(stage, box, draft.figure)) {
    if (typed->value) put(draft.what, typed->what, *typed->value, units);
    return;
  }
  Box in = panel_with_title(stage, box, say(Word::insert_title, draft.what.lift));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const std::size_t bays = view.elevation.bays.size();
  if (bays > 1) draw_bays(stage, in.cut_top(canvas.scale().target(), gap), draft.what.bay, bays);
  draw_groups(stage, in.cut_top(canvas.scale().target(), gap), draft.what);
  const Box says = in.cut_bottom(canvas.height(Face::small) + canvas.mm(0.8), canvas.mm(1));
  in.y1 = std::min(in.y1, in.y0 + canvas.mm(24));
  draw_figures(stage, in, draft);
  const auto group = static_cast<std::size_t>(std::clamp(draft.what.group, 1, kGroups)) - 1;
  const Length widest = view.insert.widest[group];
  const std::string reach = figure_text(Figure::spacing, shown(widest, units), units);
  if (draft.what.spacing > widest) {
    tag(canvas, says, Symbol::mend_sign, say(Word::insert_wide, draft.what.group, reach),
        Look::mend);
  } else {
    canvas.text(say(Word::insert_widest, draft.what.group, reach), says,
                {.face = Face::small, .colours = canvas.on_panel()});
  }
  const PanelEnd end = keep_or_cancel(stage, foot, draft.what.lift > 0 && !view.closed);
  if (end == PanelEnd::kept) stage.keep(draft.what, draft.at);
  if (end != PanelEnd::open) stage.close();
}

}  // namespace rb::screens
