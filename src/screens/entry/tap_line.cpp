#include "screens/entry/tap_line.h"

#include <algorithm>
#include <cmath>

#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

// The original, who changed it, when and why.
std::string was_words(const Say& say, const TapWas& was, bool struck, Naming naming) {
  const std::string why =
      was.chosen ? std::string{told(say.language, event::says(*was.chosen))} : was.why;
  const std::string when = say.clock_short(was.when);
  if (struck) return say(Word::struck) + ": " + say(Word::tap_struck_by, was.by, when, why);
  return say(Word::corrected) + ": " +
         say(Word::tap_was, say.clock_short(was.at), event_words(say, was.what, naming), was.by,
             when, why);
}

std::string standing_words(const Say& say, const TapView& tap, Naming naming) {
  std::string words;
  const auto add = [&](const std::string& part) {
    if (!words.empty()) words += " \u00B7 ";
    words += part;
  };
  if (tap.was) add(was_words(say, *tap.was, tap.struck, naming));
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

}  // namespace

CorrectDraft correct_draft(const TapView& tap) {
  CorrectDraft draft;
  draft.target = tap.id;
  draft.at = tap.at;
  draft.stepped = tap.stepped;
  draft.what = tap.what;
  return draft;
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
  const std::string standing = standing_words(say, tap, view.naming);
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
  const int lines = tap.was ? 2 : 1;
  const float tall =
      canvas.height(Face::strong) + static_cast<float>(lines) * canvas.height(Face::small);
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
  in.y1 = in.y0 + static_cast<float>(lines) * canvas.height(Face::small);
  const Box sign = in.cut_left(canvas.mm(3.2), canvas.mm(1));
  if (!tap.struck)
    canvas.symbol(tap.keeping ? Symbol::clock : Symbol::check, sign.inset(0, canvas.mm(0.4)), soft);
  // Where the room is narrow the bare word stands; the whole is a tap away.
  const bool narrow = canvas.width(standing, Face::small) > in.w() && tap.kept && !tap.was;
  canvas.text(narrow ? say(tap.keeping ? Word::keep_keeping : Word::kept) : standing,
              tap.struck ? Box{sign.x0, in.y0, in.x1, in.y1} : in,
              {.face = Face::small,
               .colours = {pair.ground, soft},
               .down = Down::top,
               .lines = lines,
               .free_text = tap.was.has_value()});
}

}  // namespace rb::screens
