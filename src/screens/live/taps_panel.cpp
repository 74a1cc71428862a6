#include "screens/live/taps_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/filter_panel.h"
#include "screens/entry/paging.h"
#include "screens/entry/tap_line.h"
#include "screens/live/next_panel.h"
#include "screens/load/truck_line.h"
#include "screens/paper/mirror_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

constexpr double kNextMm = 20.0;

// What of the pour does not read stands apart from what does, in sign and words.
void draw_damage(Stage& stage, Box& in) {
  const std::string words = damage_words(stage.say, stage.damage);
  if (words.empty()) return;
  Canvas& canvas = stage.canvas;
  tag(canvas, in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)), Symbol::stop_sign, words,
      Look::stop, Face::small, true);
}

// Higher than a line where two taps stand under it all the same.
float card_height(const Canvas& canvas, float room) {
  const float target = canvas.scale().target();
  return std::max(target, std::min(canvas.mm(kNextMm), room - 2 * (target + canvas.gap())));
}

void draw_lines(Stage& stage, const Box& room, std::size_t first, std::size_t lines,
                const PourView& view) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const float tall = canvas.scale().target();
  for (std::size_t i = 0; i < lines && first + i < view.taps.size(); ++i) {
    const float top = room.y0 + static_cast<float>(i) * (tall + gap);
    draw_tap(stage, {room.x0, top, room.x1, top + tall}, view.taps[first + i], view);
  }
}

}  // namespace

void draw_last_taps(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  panel(canvas, box);
  Box in = box.inset(canvas.mm(2.2), canvas.mm(1.2));
  // What the plan has next stands over what was done last.
  if (!view.closed) {
    draw_next_card(stage, in.cut_top(card_height(canvas, in.h()), canvas.gap()), view);
  } else if (stage.head) {
    draw_head_code(stage, in.cut_top(canvas.scale().target(), canvas.gap()));
  }
  draw_damage(stage, in);
  // A load that is here takes the place of all but the last tap.
  if (truck_is_here(view) && lines_in(canvas, in.h()) >= 2) {
    draw_truck_card(stage, in.cut_top(canvas.scale().target(), canvas.gap()), view);
  }
  const std::size_t room = lines_in(canvas, in.h());
  // The heading gives way before a line does.
  if (lines_in(canvas, in.h() - canvas.height(Face::small) - canvas.mm(1.6)) == room) {
    heading(canvas, in, stage.say(Word::last_taps));
  }
  if (view.taps.empty()) {
    canvas.text(stage.say(Word::last_taps_none), in, {.colours = canvas.soft(), .lines = 2});
    return;
  }
  draw_lines(stage, in, 0, room, view);
}

void draw_all_taps(Stage& stage, const Box& box, TapsDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  Box in = panel_with_title(stage, box, stage.say(Word::last_taps));
  draw_damage(stage, in);
  if (draw_filter(stage, in, draft.filter, view)) return;
  const TapFilter& filter = draft.filter.set;
  const std::vector<EventRef> taps =
      filter.any() ? view.taps.filtered(filter) : std::vector<EventRef>{};
  const std::size_t count = filter.any() ? taps.size() : view.taps.size();
  const Pages pages = turn_pages(stage, in, count, draft.page, "taps", 0, true);
  filter_button(stage, pages.beside, draft.filter, view);
  if (count == 0) {
    canvas.text(stage.say(filter.any() ? Word::filter_nothing : Word::last_taps_none), pages.room,
                {.colours = canvas.soft()});
  }
  if (!filter.any()) {
    draw_lines(stage, pages.room, pages.first, pages.lines, view);
    return;
  }
  Box room = pages.room;
  for (std::size_t i = pages.first; i < pages.first + pages.lines && i < taps.size(); ++i) {
    draw_tap(stage, room.cut_top(canvas.scale().target(), canvas.gap()), view.taps.of(taps[i]),
             view);
  }
}

}  // namespace rb::screens
