#include "screens/live/taps_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/paging.h"
#include "screens/live/mirror_panel.h"
#include "screens/live/next_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

std::string standing_words(const Say& say, const TapView& tap) {
  std::string words;
  const auto add = [&](const std::string& part) {
    if (!words.empty()) words += " \u00B7 ";
    words += part;
  };
  if (tap.struck) add(say(Word::struck));
  if (!tap.struck && tap.fixed) add(say(Word::corrected));
  if (!tap.struck && !tap.counts) add(say(Word::counts_not));
  if (tap.late) add(say(Word::entered_late));
  if (tap.uncertain > Seconds{0})
    add(say(Word::off_by, fmt::format("{:.1f}", tap.uncertain.count())));
  if (tap.keeping) {
    add(say(Word::keep_keeping));
    return words;
  }
  if (tap.from_script) add(say(Word::from_script));
  if (words.empty() && tap.kept) add(say(Word::kept_at, say.clock(*tap.kept)));
  if (words.empty()) add(say(Word::kept));
  return words;
}

void draw_tap(Stage& stage, const Box& box, const TapView& tap, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box line = box;
  const std::string key = tap.id.empty() ? std::to_string(tap.ref) : tap.id.text;
  if (tap.take_back) {
    const float wide = std::min(canvas.mm(27), std::round(line.w() * 0.42F));
    const Box back = line.cut_right(std::max(wide, canvas.scale().target()), canvas.gap());
    if (button(canvas, back,
               {.id = "take-back " + key,
                .text = say(Word::take_back),
                .under = fmt::format("{} s", whole_seconds(*tap.take_back)),
                .look = Look::act})) {
      stage.keep(
          event::Strike{tap.id, event::says(event::Chosen::taken_back), event::Chosen::taken_back});
    }
  }
  const std::string id = "tap " + key;
  const std::string text = event_words(say, tap.what, view.naming);
  const std::string standing = standing_words(say, tap);
  if (canvas.target(id, line, text + " " + standing, tap.may_correct)) {
    stage.open(correct_draft(tap));
  }
  const Pair pair = tap.struck ? canvas.theme().off : canvas.theme().quiet;
  const Colour soft = tap.struck ? pair.ink : canvas.theme().ink_soft;
  const float radius = canvas.mm(1.6);
  canvas.fill(line, pair.ground, radius);
  const bool pressed = canvas.pressed(id);
  canvas.edge(line, pressed ? canvas.theme().ink : canvas.theme().line,
              canvas.mm(pressed ? 1.2 : 0.25), radius);
  Box in = line.inset(canvas.mm(1.8), canvas.mm(0.9));
  if (tap.may_correct) {
    const Box sign = in.cut_right(canvas.mm(5), canvas.mm(1.5));
    canvas.symbol(Symbol::pencil, sign.inset(0, (in.h() - canvas.mm(5)) / 2), soft);
  }
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  in.y0 += std::max(0.0F, std::floor((in.h() - tall) / 2));
  Box first = in.cut_top(canvas.height(Face::strong));
  const std::string at = say.clock_short(tap.at);
  const Box when = first.cut_left(canvas.width("00:00", Face::small), canvas.mm(1.5));
  canvas.text(at, when, {.face = Face::small, .colours = {pair.ground, soft}});
  const Box wrote =
      canvas.text(text, first, {.face = Face::strong, .colours = pair, .free_text = true});
  if (tap.struck) {
    canvas.line({wrote.x0, wrote.middle().y}, {wrote.x1, wrote.middle().y}, pair.ink,
                canvas.mm(0.5));
  }
  in.y1 = in.y0 + canvas.height(Face::small);
  const Box sign = in.cut_left(canvas.mm(3.2), canvas.mm(1));
  if (!tap.struck)
    canvas.symbol(tap.keeping ? Symbol::clock : Symbol::check, sign.inset(0, canvas.mm(0.4)), soft);
  // Where the room is narrow the bare word stands; the whole is a tap away.
  const bool narrow = canvas.width(standing, Face::small) > in.w() && tap.kept && !tap.struck;
  canvas.text(narrow ? say(tap.keeping ? Word::keep_keeping : Word::kept) : standing,
              tap.struck ? Box{sign.x0, in.y0, in.x1, in.y1} : in,
              {.face = Face::small, .colours = {pair.ground, soft}});
}

// What of the pour does not read stands apart from what does, in sign and words.
void draw_damage(Stage& stage, Box& in) {
  const std::string words = damage_words(stage.say, stage.damage);
  if (words.empty()) return;
  Canvas& canvas = stage.canvas;
  tag(canvas, in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)), Symbol::stop_sign, words,
      Look::stop, Face::small, true);
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

CorrectDraft correct_draft(const TapView& tap) {
  CorrectDraft draft;
  draft.target = tap.id;
  draft.at = tap.at;
  draft.stepped = tap.stepped;
  draft.what = tap.what;
  return draft;
}

void draw_last_taps(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  panel(canvas, box);
  Box in = box.inset(canvas.mm(2.2), canvas.mm(1.2));
  // What the plan has next stands over what was done last.
  if (!view.closed) {
    draw_next_card(stage, in.cut_top(canvas.scale().target(), canvas.gap()), view);
  } else if (stage.head) {
    draw_head_code(stage, in.cut_top(canvas.scale().target(), canvas.gap()));
  }
  draw_damage(stage, in);
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
  const Pages pages = turn_pages(stage, in, view.taps.size(), draft.page, "taps");
  if (view.taps.empty()) {
    canvas.text(stage.say(Word::last_taps_none), pages.room, {.colours = canvas.soft()});
  }
  draw_lines(stage, pages.room, pages.first, pages.lines, view);
}

}  // namespace rb::screens
