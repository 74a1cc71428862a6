#include "screens/paper/record_panel.h"

#include <algorithm>

#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

// When the day began, where the tablet is.
Moment begin_of(const Stage& stage, int days_back) {
  const auto offset = stage.say.utc_offset;
  const std::string text = day_text(after(stage.now, -hours(24.0 * days_back)), offset);
  return parse_day(text, offset).value_or(stage.now);
}

std::string where_to(const Stage& stage, const RecordDraft& draft) {
  if (!draft.folder.empty()) return draft.folder;
  return stage.say(stage.mirror->folder.empty() ? Word::record_beside : Word::record_at_mirror);
}

void draw_day(Stage& stage, const Box& line, RecordDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = line;
  const float side = std::max(canvas.scale().target(), in.w() / 5);
  if (button(canvas, in.cut_left(side, gap),
             {.id = "day before", .symbol = Symbol::back, .repeats = true})) {
    ++draft.days_back;
  }
  if (button(canvas, in.cut_right(side, gap),
             {.id = "day after",
              .symbol = Symbol::forward,
              .enabled = draft.days_back > 0,
              .repeats = true})) {
    --draft.days_back;
  }
  std::string day = day_text(begin_of(stage, draft.days_back), say.utc_offset);
  if (draft.days_back == 0) day = say(Word::record_today) + " \u00B7 " + day;
  canvas.text(day, in,
              {.face = Face::title, .colours = canvas.on_panel(), .across = Across::middle});
}

void draw_forms(Stage& stage, const Box& line, RecordDraft& draft) {
  Canvas& canvas = stage.canvas;
  for (const bool all : {false, true}) {
    const bool on = draft.all_forms == all;
    if (button(canvas, line.column(all ? 1 : 0, 2, canvas.gap()),
               {.id = all ? "forms all" : "forms pdf",
                .text = stage.say(all ? Word::record_all : Word::record_pdf),
                .look = on ? Look::act : Look::quiet,
                .symbol = on ? Symbol::check : Symbol::none})) {
      draft.all_forms = all;
    }
  }
}

// How the one that was asked for stands; the panel is where it is waited for.
void draw_record_end(Stage& stage, const Box& box, const CopySeen& seen) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  using State = CopySeen::State;
  if (seen.state == State::none) return;
  if (seen.state == State::under_way) {
    canvas.text(say(Word::record_doing), box,
                {.colours = canvas.on_panel(), .down = Down::top, .lines = 2});
    return;
  }
  const bool made = seen.state == State::made;
  tag(canvas, box, made ? Symbol::check : Symbol::mend_sign,
      say(made ? Word::record_made : Word::record_failed, seen.says),
      made ? Look::well : Look::mend, Face::small, true);
}

}  // namespace

void draw_record(Stage& stage, const Box& box, RecordDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  if (draft.typing) {
    const PanelEnd end = draw_text_entry(stage, box, say(Word::record_folder_title), *draft.typing,
                                         kText, Keys::path);
    if (end == PanelEnd::kept) draft.folder = *draft.typing;
    if (end != PanelEnd::open) draft.typing.reset();
    return;
  }
  Box in = panel_with_title(stage, box, say(Word::record_title));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  back_button(stage, foot.column(0, 2, gap));
  if (stage.mirror == nullptr) {
    canvas.text(say(Word::keep_read_only), in,
                {.colours = canvas.on_panel(), .down = Down::top, .lines = 3});
    return;
  }
  const bool busy = stage.mirror->record.state == CopySeen::State::under_way;
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "record now",
              .text = say(Word::record_make),
              .look = Look::act,
              .symbol = Symbol::list,
              .enabled = !busy})) {
    stage.intents.emplace_back(
        MakeRecord{begin_of(stage, draft.days_back), draft.all_forms, draft.folder, say.voice()});
    draft.asked = true;
  }
  const float tall = std::max(canvas.scale().target(), canvas.mm(16));
  draw_day(stage, in.cut_top(tall, gap), draft);
  draw_forms(stage, in.cut_top(tall, gap), draft);
  if (button(canvas, in.cut_top(tall, gap),
             {.id = "record folder",
              .text = say(Word::record_folder),
              .under = where_to(stage, draft),
              .free_text = true})) {
    draft.typing = draft.folder.empty() ? "/" : draft.folder;
  }
  if (draft.asked) {
    draw_record_end(stage, in.cut_top(3 * canvas.height(Face::small), gap), stage.mirror->record);
  }
}

}  // namespace rb::screens
