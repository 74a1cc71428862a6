#include "screens/entry/ready_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

struct ReadyStanding {
  std::string words;
  Symbol symbol;
  Look look;
};

ReadyStanding standing_of(const Say& say, const ReadyLine& line) {
  if (!line.ok || !line.since) return {say(Word::ready_open), Symbol::none, Look::off};
  const std::string at = " " + say.clock_short(*line.since);
  if (*line.ok) return {say(Word::ready_ok) + at, Symbol::check, Look::well};
  return {say(Word::ready_not_ok) + at, Symbol::mend_sign, Look::mend};
}

// True when the point wants a note typed.
bool draw_line(Stage& stage, const Box& box, const ReadyLine& line, bool can) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const ReadyStanding standing = standing_of(say, line);
  const std::string name = ready_name(say, line.item);
  card_ground(canvas, box);
  Box in = box;
  bool note = false;
  if (button(canvas, in.cut_right(canvas.mm(24), gap),
             {.id = "not-ok " + line.item,
              .text = say(Word::ready_not_ok),
              .said = name,
              .look = line.ok == false ? Look::mend : Look::quiet,
              .enabled = can && line.ok != false})) {
    // Kept at once; the note is a second thought and may be left out.
    stage.keep(event::Ready{line.item, false, {}});
    note = true;
  }
  if (button(canvas, in.cut_right(canvas.mm(19), gap),
             {.id = "ok " + line.item,
              .text = say(Word::ready_ok),
              .said = name,
              .look = line.ok == true ? Look::well : Look::act,
              .enabled = can && line.ok != true})) {
    stage.keep(event::Ready{line.item, true, {}});
  }
  if (line.ok == false) {
    if (button(canvas, in.cut_right(canvas.mm(16), gap),
               {.id = "ready-note " + line.item,
                .text = {},
                .said = say(Word::ready_note) + " " + name,
                .symbol = Symbol::pencil,
                .enabled = can})) {
      note = true;
    }
  }
  in = in.inset(canvas.mm(2), canvas.mm(0.8));
  in.x1 += canvas.mm(2);
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  in.y0 += std::max(0.0F, std::floor((in.h() - tall) / 2));
  canvas.text(
      name, in.cut_top(canvas.height(Face::strong)),
      {.face = Face::strong, .colours = canvas.theme().quiet, .free_text = !line.word.has_value()});
  Box under = in.cut_top(canvas.height(Face::small));
  const Box state = tag(canvas, under, standing.symbol, standing.words, standing.look);
  if (line.note.empty()) return note;
  under.x0 = state.x1 + canvas.mm(1.5);
  canvas.text(line.note, under,
              {.face = Face::small, .colours = canvas.theme().quiet, .free_text = true});
  return note;
}

}  // namespace

void draw_ready(Stage& stage, const Box& box, ReadyDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  if (draft.noting) {
    const std::string title = say(Word::ready_note_title, ready_name(say, *draft.noting));
    const PanelEnd end = draw_text_entry(stage, box, title, draft.text);
    if (end == PanelEnd::kept) stage.keep(event::Ready{*draft.noting, false, draft.text});
    if (end != PanelEnd::open) stage.open(ReadyDraft{.page = draft.page});
    return;
  }
  const ReadyCounts counts = count(view.ready);
  Box in =
      panel_with_title(stage, box,
                       say(Word::ready_title) + " \u00B7 " +
                           say(Word::ready_counts, counts.answered, counts.all, counts.not_ok));
  const Box advice = in.cut_top(2 * canvas.height(Face::small), canvas.mm(0.6));
  canvas.text(say(Word::ready_advice), advice,
              {.face = Face::small, .colours = canvas.soft(), .lines = 2});
  const Pages pages = turn_pages(stage, in, view.ready.size(), draft.page, "ready");
  const float tall = canvas.scale().target();
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.ready.size(); ++i) {
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + canvas.gap());
    const ReadyLine& line = view.ready[pages.first + i];
    if (draw_line(stage, {pages.room.x0, top, pages.room.x1, top + tall}, line, !view.closed)) {
      stage.open(ReadyDraft{.page = draft.page, .noting = line.item, .text = line.note});
    }
  }
}

Box offer_ready(Stage& stage, const Box& box, const PourView& view) {
  const bool begun =
      std::any_of(view.elements.begin(), view.elements.end(),
                  [](const ElementChoice& e) { return e.placing || e.lifts_done > 0; });
  if (begun || view.closed) return box;
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const ReadyCounts counts = count(view.ready);
  const bool done = counts.open() == 0;
  Box room = box;
  const Box offer =
      room.cut_right(std::max(canvas.scale().target(), std::round(box.w() * 0.44F)), canvas.gap());
  if (button(canvas, offer,
             {.id = "ready",
              .text = say(Word::ready),
              .under = done ? say(Word::ready_all_ok, counts.all)
                            : say(Word::ready_left, counts.open(), counts.all),
              .look = counts.not_ok > 0 ? Look::mend : Look::quiet,
              .symbol = done ? Symbol::check : Symbol::list,
              .symbol_above = true})) {
    stage.open(ReadyDraft{});
  }
  return room;
}

}  // namespace rb::screens
