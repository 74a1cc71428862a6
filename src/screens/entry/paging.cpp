#include "screens/entry/paging.h"

#include <algorithm>

namespace rb::screens {

std::size_t lines_in(const Canvas& canvas, float height) {
  const float gap = canvas.gap();
  return static_cast<std::size_t>(std::max(0.0F, (height + gap) / (canvas.scale().target() + gap)));
}

Pages turn_pages(Stage& stage, const Box& box, std::size_t count, int& page, const std::string& id,
                 float tall, bool beside) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  if (tall <= 0) tall = canvas.scale().target();
  Pages out;
  Box room = box;
  Box foot = room.cut_bottom(canvas.scale().target(), gap);
  out.room = room;
  out.lines = std::max<std::size_t>(1, static_cast<std::size_t>((room.h() + gap) / (tall + gap)));
  const int pages = std::max(1, static_cast<int>((count + out.lines - 1) / out.lines));
  page = std::clamp(page, 0, pages - 1);
  back_button(stage, foot.cut_left((foot.w() - 3 * gap) / 4, gap));
  if (beside) out.beside = foot.cut_left((foot.w() - 2 * gap) / 3, gap);
  if (pages > 1) {
    const Box earlier = foot.column(0, 3, gap);
    const Box later = foot.column(2, 3, gap);
    if (button(canvas, earlier,
               {.id = id + " page-up", .text = {}, .symbol = Symbol::up, .enabled = page > 0})) {
      --page;
    }
    if (button(canvas, later,
               {.id = id + " page-down",
                .text = {},
                .symbol = Symbol::down,
                .enabled = page + 1 < pages})) {
      ++page;
    }
    canvas.text(stage.say(Word::page_of, page + 1, pages), foot.column(1, 3, gap),
                {.face = Face::strong, .colours = canvas.on_panel(), .across = Across::middle});
  }
  out.first = static_cast<std::size_t>(page) * out.lines;
  return out;
}

namespace {

// What the panel lies over is told beside its title, in a sign and, where there is room, in words.
void draw_covered(const Stage& stage, Box& head, const std::string& title) {
  if (!stage.covered) return;
  Canvas& canvas = stage.canvas;
  const Covered& banner = *stage.covered;
  const float around = canvas.mm(7.5);
  const float all = head.w() - std::min(head.w() / 2, canvas.width(title, Face::title));
  const float told = canvas.width(banner.words, Face::small) + around;
  const bool room = !banner.words.empty() && told <= all;
  const Box box = head.cut_right(room ? told : canvas.mm(6.5), canvas.mm(1.5));
  tag(canvas, box, banner.symbol, room ? banner.words : std::string{}, banner.look);
}

}  // namespace

Box panel_with_title(Stage& stage, const Box& box, const std::string& title) {
  Canvas& canvas = stage.canvas;
  panel(canvas, box);
  canvas.edge(box, canvas.theme().act.ground, canvas.mm(0.6), canvas.mm(1.6));
  Box in = box.inset(canvas.mm(2.2));
  Box head = in.cut_top(canvas.height(Face::title), canvas.mm(0.9));
  draw_covered(stage, head, title);
  canvas.text(title, head, {.face = Face::title, .colours = canvas.on_panel(), .free_text = true});
  return in;
}

Box panel_with_back(Stage& stage, const Box& box, const std::string& title, Box* beside) {
  Canvas& canvas = stage.canvas;
  panel(canvas, box);
  canvas.edge(box, canvas.theme().act.ground, canvas.mm(0.6), canvas.mm(1.6));
  Box in = box.inset(canvas.mm(2.2));
  Box head = in.cut_top(canvas.scale().target(), canvas.gap());
  const float wide = std::max(canvas.mm(34), head.w() / 4);
  back_button(stage, head.cut_left(wide, canvas.gap()));
  if (beside != nullptr) *beside = head.cut_right(wide, canvas.gap());
  draw_covered(stage, head, title);
  canvas.text(title, head,
              {.face = Face::title, .colours = canvas.on_panel(), .lines = 2, .free_text = true});
  return in;
}

PanelEnd keep_or_cancel(Stage& stage, const Box& foot, bool may_keep) {
  Canvas& canvas = stage.canvas;
  PanelEnd end = PanelEnd::open;
  if (button(canvas, foot.column(0, 2, canvas.gap()),
             {.id = "back", .text = stage.say(Word::cancel), .symbol = Symbol::back})) {
    end = PanelEnd::cancelled;
  }
  if (button(canvas, foot.column(1, 2, canvas.gap()),
             {.id = "keep",
              .text = stage.say(Word::keep),
              .look = Look::act,
              .symbol = Symbol::check,
              .face = Face::title,
              .enabled = may_keep})) {
    end = PanelEnd::kept;
  }
  return end;
}

bool back_button(Stage& stage, const Box& box, Word text) {
  if (!button(stage.canvas, box, {.id = "back", .text = stage.say(text), .symbol = Symbol::back})) {
    return false;
  }
  stage.close();
  return true;
}

}  // namespace rb::screens
