#include "screens/entry/number_pad.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr std::size_t kMostKeys = 6;
constexpr Length kFarOver = metres(0.3);  // half a usual lift (our own choice)
constexpr char kFootMark = '\'';

std::string as_typed(Length height, Units units) {
  if (units == Units::si) return fmt::format("{:.2f}", in_metres(height));
  const long inches = std::lround(in_inches(height));
  return fmt::format("{}{}{}", inches / 12, kFootMark, inches % 12);
}

std::string typed_as(const std::string& typed, Units units) {
  if (units == Units::si) return typed + " m";
  const std::size_t mark = typed.find(kFootMark);
  if (mark == std::string::npos) return typed + "\u2032";
  return fmt::format("{}\u2032 {}\u2033", typed.substr(0, mark), typed.substr(mark + 1));
}

}  // namespace

std::optional<double> typed_number(const std::string& typed) {
  double value = 0;
  const char* end = typed.data() + typed.size();
  const auto [at, error] = std::from_chars(typed.data(), end, value, std::chars_format::fixed);
  if (error != std::errc{} || at != end) return {};
  return value;
}

std::optional<Length> typed_height(const std::string& typed, Units units) {
  if (units == Units::si) {
    const auto value = typed_number(typed);
    return value ? std::optional{metres(*value)} : std::nullopt;
  }
  const std::size_t mark = typed.find(kFootMark);
  const auto ft = typed_number(typed.substr(0, mark));
  if (!ft) return {};
  if (mark == std::string::npos || mark + 1 == typed.size()) return feet(*ft);
  const auto in = typed_number(typed.substr(mark + 1));
  if (!in) return {};
  return feet(*ft) + inches(*in);
}

void press_key(std::string& typed, char key, Units units) {
  const char mark = units == Units::si ? '.' : kFootMark;
  if (key == '<') {
    if (!typed.empty()) typed.pop_back();
    return;
  }
  if (typed.size() >= kMostKeys) return;
  if (key == mark) {
    if (typed.find(mark) != std::string::npos) return;
    if (typed.empty()) typed = "0";
    typed += mark;
    return;
  }
  if (key < '0' || key > '9') return;
  if (typed == "0") typed.clear();
  typed += key;
}

std::optional<char> key_tapped(Stage& stage, const Box& keys, std::string_view order,
                               const std::string& name) {
  Canvas& canvas = stage.canvas;
  std::optional<char> tapped;
  for (int i = 0; i < 12; ++i) {
    const char what = order[static_cast<std::size_t>(i)];
    if (what == ' ') continue;
    const Box key = keys.line(i / 3, 4, canvas.gap()).column(i % 3, 3, canvas.gap());
    ButtonSpec spec{.id = name + " " + what,
                    .text = what == kFootMark ? "ft" : std::string(1, what),
                    .face = Face::title,
                    .repeats = true};
    if (what == '<') {
      spec.text.clear();
      spec.symbol = Symbol::erase;
    }
    if (button(canvas, key, spec)) tapped = what;
  }
  return tapped;
}

void draw_keys(Stage& stage, const Box& keys, std::string& typed) {
  const Units units = stage.say.units;
  const char mark = units == Units::si ? '.' : kFootMark;
  const auto key = key_tapped(stage, keys, std::string("123456789") + mark + "0<");
  if (key) press_key(typed, *key, units);
}

void draw_digits(Stage& stage, const Box& keys, std::string& typed, std::size_t most) {
  const auto key = key_tapped(stage, keys, "123456789 0<");
  if (!key) return;
  if (*key == '<') {
    if (!typed.empty()) typed.pop_back();
  } else if (typed.size() < most) {
    typed += *key;
  }
}

void draw_value(Stage& stage, const Box& box, std::string& typed, Length guess, bool guessed) {
  Canvas& canvas = stage.canvas;
  const Units units = stage.say.units;
  const float gap = canvas.gap();
  Box in = box;
  const Box steps = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const auto now = typed.empty() ? std::optional{guess} : typed_height(typed, units);
  canvas.fill(in, canvas.theme().quiet.ground, canvas.mm(1.6));
  canvas.edge(in, canvas.theme().ink, canvas.mm(0.5), canvas.mm(1.6));
  const bool shown_guess = guessed && typed.empty();
  std::string text = typed.empty() ? stage.say.height(guess) : typed_as(typed, units);
  Pair colours = canvas.theme().quiet;
  if (shown_guess) {
    text = "~" + text;
    colours.ink = canvas.theme().ink_soft;
  }
  canvas.text(text, in.inset(canvas.mm(2)),
              {.face = Face::huge, .colours = colours, .across = Across::middle});
  const Length step = units == Units::si ? millimetres(50) : inches(1);
  const std::string named = units == Units::si ? "5 cm" : "1\u2033";
  const Box less = steps.column(0, 2, gap);
  const Box more = steps.column(1, 2, gap);
  const auto put = [&](Length height) { typed = as_typed(std::max(height, metres(0)), units); };
  if (button(canvas, less,
             {.id = "step-less",
              .text = named,
              .symbol = Symbol::minus,
              .enabled = now.has_value(),
              .repeats = true})) {
    put(*now - step);
  }
  if (button(canvas, more,
             {.id = "step-more",
              .text = named,
              .symbol = Symbol::plus,
              .enabled = now.has_value(),
              .repeats = true})) {
    put(*now + step);
  }
}

namespace {

// To a tenth of a millimetre: no tape tells more, and the book is spared 0.30000000000000004.
Length as_read(Length height) {
  return metres(std::round(in_metres(height) * 10000.0) / 10000.0);
}

}  // namespace

void draw_bays(Stage& stage, const Box& box, std::optional<int>& bay, std::size_t bays) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Say& say = stage.say;
  Box all = box;
  const Box every = all.cut_left(std::max(canvas.scale().target(), canvas.mm(20)), gap);
  if (button(canvas, every,
             {.id = "bay all",
              .text = say(Word::pad_all_bays),
              .look = bay ? Look::quiet : Look::act,
              .symbol = bay ? Symbol::none : Symbol::check,
              .face = Face::small,
              .symbol_above = true})) {
    bay.reset();
  }
  const int room = static_cast<int>((all.w() + gap) / (canvas.scale().target() + gap));
  const int count = static_cast<int>(bays);
  if (count <= room) {
    for (int i = 0; i < count; ++i) {
      const bool on = bay == i + 1;
      if (button(canvas, all.column(i, count, gap),
                 {.id = "bay " + std::to_string(i + 1),
                  .text = std::to_string(i + 1),
                  .look = on ? Look::act : Look::quiet,
                  .symbol = on ? Symbol::check : Symbol::none,
                  .symbol_above = true})) {
        bay = i + 1;
      }
    }
    return;
  }
  const Box less = all.cut_left(canvas.scale().target(), gap);
  const Box more = all.cut_right(canvas.scale().target(), gap);
  if (button(canvas, less,
             {.id = "bay less", .text = {}, .symbol = Symbol::back, .repeats = true})) {
    bay = std::max(1, bay.value_or(2) - 1);
  }
  if (button(canvas, more,
             {.id = "bay more", .text = {}, .symbol = Symbol::forward, .repeats = true})) {
    bay = std::min(count, bay.value_or(0) + 1);
  }
  canvas.text(
      bay ? say(Word::pad_bay, *bay) : std::string("\u2013"), all,
      {.face = Face::strong, .colours = canvas.on_panel(), .across = Across::middle, .lines = 2});
}

void draw_pad(Stage& stage, const Box& box, PadDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const bool end = draft.use == PadDraft::Use::lift_end;
  Box in = panel_with_title(stage, box,
                            say(end ? Word::pad_end_title : Word::pad_top_title, draft.lift));
  const Box keys = in.cut_left(std::round(in.w() * 0.46F), gap);
  draw_keys(stage, keys, draft.typed);
  const Box last = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(19)), gap);
  const std::size_t bays = view.elevation.bays.size();
  if (bays > 1) draw_bays(stage, in.cut_bottom(canvas.scale().target(), gap), draft.bay, bays);
  Box says = in.cut_bottom(canvas.height(Face::small) * 2, canvas.mm(1));
  draw_value(stage, in, draft.typed, draft.guess, true);

  const auto height =
      draft.typed.empty() ? std::optional{draft.guess} : typed_height(draft.typed, say.units);
  Length stood = view.lift.low;
  if (draft.bay && static_cast<std::size_t>(*draft.bay) <= bays) {
    stood = view.elevation.bays[static_cast<std::size_t>(*draft.bay) - 1].standing;
  }
  // The form's freeboard may stand a hand above the plan; the fold decides, this only warns early.
  const bool high = height && *height > view.lift.ceiling + metres(0.1);
  // A slip of a key, or a lift placed far higher than planned: asked about once.
  const bool far_over = height && view.lift.planned_top &&
                        *height > *view.lift.planned_top + kFarOver && *height > stood;
  const TextStyle small{.face = Face::small, .colours = canvas.on_panel(), .lines = 2};
  if (!height) {
    canvas.text(say(Word::pad_empty), says, small);
  } else if (high) {
    tag(canvas, says, Symbol::stop_sign, say(Word::pad_too_high, say.height(view.lift.ceiling)),
        Look::stop);
  } else if (*height < stood) {
    tag(canvas, says, Symbol::mend_sign, say(Word::pad_lower, say.height(stood)), Look::mend);
  } else if (far_over) {
    tag(canvas, says, Symbol::mend_sign,
        say(Word::pad_far_over, say.height(*view.lift.planned_top)), Look::mend);
  } else if (draft.typed.empty()) {
    tag(canvas, says, Symbol::note_sign, say(Word::pad_guess), Look::off);
  }
  const PanelEnd out = keep_or_cancel(stage, last, height && !high);
  if (out == PanelEnd::cancelled) stage.close();
  if (out == PanelEnd::kept && far_over && draft.asked_for != draft.typed) {
    draft.asked_for = draft.typed;
  } else if (out == PanelEnd::kept) {
    const Length read = as_read(*height);
    if (end) {
      stage.keep(event::LiftEnd{draft.element, draft.lift, read, draft.bay}, draft.at);
    } else {
      stage.keep(event::Top{draft.element, read, draft.bay}, draft.at);
    }
    stage.close();
  }
}

}  // namespace rb::screens
