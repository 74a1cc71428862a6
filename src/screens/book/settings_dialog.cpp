// The settings: everything at once, each change shown as soon as it is tapped.
#include <algorithm>
#include <cmath>

#include "screens/entry/paging.h"
#include "screens/live/dialogs.h"

namespace rb::screens {

namespace {

struct Option {
  std::string id, text;
  bool on = false;
};

// A name and its choices in one line; the index of the one tapped, or -1.
int choose(Stage& stage, const Box& line, Word name, const std::vector<Option>& options) {
  Canvas& canvas = stage.canvas;
  Box in = line;
  const Box label = in.cut_left(std::round(line.w() * 0.26F), canvas.gap());
  canvas.text(stage.say(name), label,
              {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2});
  int tapped = -1;
  const int n = static_cast<int>(options.size());
  for (int i = 0; i < n; ++i) {
    const Option& option = options[static_cast<std::size_t>(i)];
    if (button(canvas, in.column(i, n, canvas.gap()),
               {.id = option.id,
                .text = option.text,
                .look = option.on ? Look::act : Look::quiet,
                .symbol = option.on ? Symbol::check : Symbol::none,
                .face = Face::strong,
                .symbol_above = in.column(i, n, canvas.gap()).w() < canvas.mm(26)})) {
      tapped = i;
    }
  }
  return tapped;
}

void draw_sound(Stage& stage, const Box& line, Settings& changed) {
  const Say& say = stage.say;
  if (!stage.sound_works) {
    stage.canvas.text(say(Word::sound_none), line,
                      {.face = Face::small, .colours = stage.canvas.on_panel(), .lines = 3});
    return;
  }
  const int sound = choose(stage, line, Word::set_sound,
                           {{"sound on", say(Word::sound_on), changed.sound},
                            {"sound off", say(Word::sound_off), !changed.sound}});
  if (sound >= 0) changed.sound = sound == 0;
}

void draw_size(Stage& stage, const Box& line, Settings& changed) {
  Canvas& canvas = stage.canvas;
  Box in = line;
  const Box label = in.cut_left(std::round(line.w() * 0.26F), canvas.gap());
  canvas.text(stage.say(Word::set_diagonal), label,
              {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2});
  const Box less = in.cut_left(canvas.scale().target(), canvas.gap());
  const Box more = in.cut_right(canvas.scale().target(), canvas.gap());
  if (button(canvas, less,
             {.id = "size less", .text = {}, .symbol = Symbol::minus, .repeats = true})) {
    changed.diagonal_inches = std::max(7.0, changed.diagonal_inches - 0.1);
  }
  if (button(canvas, more,
             {.id = "size more", .text = {}, .symbol = Symbol::plus, .repeats = true})) {
    changed.diagonal_inches = std::min(32.0, changed.diagonal_inches + 0.1);
  }
  // A bar to hold a rule against: the only honest way to know the density.
  Box said = in.cut_top(canvas.height(Face::strong));
  canvas.text(fmt::format("{:.1f}\u2033", changed.diagonal_inches), said,
              {.face = Face::strong, .colours = canvas.on_panel(), .across = Across::middle});
  const float bar = canvas.mm(50);
  const float left = std::round(in.middle().x - bar / 2);
  canvas.fill({left, in.y0 + canvas.mm(0.5), left + bar, in.y0 + canvas.mm(2.2)},
              canvas.theme().ink);
  in.y0 += canvas.mm(2.6);
  canvas.text(
      stage.say(Word::diagonal_check), in,
      {.face = Face::small, .colours = canvas.soft(), .across = Across::middle, .lines = 2});
}

}  // namespace

void draw_settings(Stage& stage, const Box& box) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Settings changed = stage.settings;
  Box second;
  Box in = panel_with_back(stage, box, say(Word::settings), &second);
  if (button(canvas, second,
             {.id = "second copy",
              .text = say(Word::mirror_title),
              .symbol = Symbol::list,
              .face = Face::strong})) {
    stage.open(MirrorDraft{});
  }
  in.y1 = std::min(in.y1, in.y0 + 5 * canvas.mm(20));
  const int theme =
      choose(stage, in.line(0, 5, gap).column(0, 2, gap), Word::set_theme,
             {{"theme sun", say(Word::set_sun), changed.theme == ThemeName::sun},
              {"theme night", say(Word::set_night), changed.theme == ThemeName::night}});
  if (theme >= 0) changed.theme = theme == 0 ? ThemeName::sun : ThemeName::night;
  draw_sound(stage, in.line(0, 5, gap).column(1, 2, gap), changed);
  const auto languages = Language::all();
  std::vector<Option> offered;
  for (const Language one : languages) {
    offered.push_back({"language " + std::string{one.code()}, std::string{one.own_name()},
                       changed.language == one});
  }
  const int language = choose(stage, in.line(1, 5, gap), Word::set_language, offered);
  if (language >= 0) changed.language = languages[static_cast<std::size_t>(language)];
  const int units = choose(stage, in.line(2, 5, gap), Word::set_units,
                           {{"units plan", say(Word::units_plan), !changed.units},
                            {"units si", say(Word::units_si), changed.units == Units::si},
                            {"units us", say(Word::units_us), changed.units == Units::us}});
  if (units == 0) changed.units.reset();
  if (units == 1) changed.units = Units::si;
  if (units == 2) changed.units = Units::us;
  const int hand =
      choose(stage, in.line(3, 5, gap), Word::hand,
             {{"hand left", say(Word::hand_left), changed.rows_on == HandSide::left},
              {"hand right", say(Word::hand_right), changed.rows_on == HandSide::right}});
  if (hand >= 0) changed.rows_on = hand == 0 ? HandSide::left : HandSide::right;
  draw_size(stage, in.line(4, 5, gap), changed);
  if (!(changed == stage.settings)) stage.intents.emplace_back(ChangeSettings{changed});
}

}  // namespace rb::screens
