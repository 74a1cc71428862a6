#include "screens/figure_pad.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/number_pad.h"
#include "screens/paging.h"

namespace rb::screens {

namespace {

constexpr std::size_t kMostFigureKeys = 7;

struct FigureRow {
  Figure what;
  FigureRange si, us;
};

constexpr std::array kFigureRows{
    FigureRow{Figure::volume,
              {Word::truck_volume, "m\u00B3", 2, 0.1, 20, 0.5, false},
              {Word::truck_volume, "yd\u00B3", 2, 0.1, 25, 0.5, false}},
    FigureRow{Figure::slump,
              {Word::test_slump, "mm", 0, 0, 300, 10, false},
              {Word::test_slump, "in", 2, 0, 12, 0.25, false}},
    FigureRow{Figure::concrete_temp,
              {Word::test_temp, "\u00B0C", 1, 0, 60, 0.5, false},
              {Word::test_temp, "\u00B0F", 0, 32, 140, 1, false}},
    FigureRow{Figure::air,
              {Word::test_air, "%", 1, 0, 20, 0.1, false},
              {Word::test_air, "%", 1, 0, 20, 0.1, false}},
    FigureRow{Figure::density,
              {Word::test_density, "kg/m\u00B3", 0, 1000, 5000, 10, false},
              {Word::test_density, "lb/ft\u00B3", 1, 60, 310, 0.5, false}},
    FigureRow{Figure::air_temp,
              {Word::air_temp_title, "\u00B0C", 0, -40, 60, 1, true},
              {Word::air_temp_title, "\u00B0F", 0, -40, 140, 1, true}},
    FigureRow{Figure::spacing,
              {Word::insert_spacing, "mm", 0, 50, 2000, 50, false},
              {Word::insert_spacing, "in", 0, 2, 80, 2, false}},
    FigureRow{Figure::each,
              {Word::insert_seconds, "s", 0, 1, 300, 1, false},
              {Word::insert_seconds, "s", 0, 1, 300, 1, false}},
    FigureRow{Figure::depth,
              {Word::insert_depth, "mm", 0, 0, 1000, 50, false},
              {Word::insert_depth, "in", 0, 0, 40, 1, false}},
};

std::string with_decimals(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text == "-0") text = "0";
  return text;
}

void draw_figure_keys(Stage& stage, const Box& keys, FigureEntry& entry, const FigureRange& range) {
  Canvas& canvas = stage.canvas;
  const char mark = range.may_be_negative ? '-' : '.';
  const std::string order = std::string("123456789") + mark + "0<";
  for (int i = 0; i < 12; ++i) {
    const Box key = keys.line(i / 3, 4, canvas.gap()).column(i % 3, 3, canvas.gap());
    const char what = order[static_cast<std::size_t>(i)];
    ButtonSpec spec{.id = std::string("key ") + what,
                    .text = what == '-' ? "+/\u2212" : std::string(1, what),
                    .face = Face::title,
                    .enabled = what != '.' || range.decimals > 0,
                    .repeats = true};
    if (what == '<') {
      spec.text.clear();
      spec.symbol = Symbol::erase;
    }
    if (button(canvas, key, spec)) press_figure_key(entry.typed, what);
  }
}

void draw_steps(Stage& stage, const Box& steps, FigureEntry& entry, const FigureRange& range) {
  Canvas& canvas = stage.canvas;
  const auto now = entry.typed.empty() ? entry.guess : typed_number(entry.typed);
  const std::string named = fmt::format("{:g} {}", range.step, range.unit);
  const auto put = [&](double value) {
    entry.typed = with_decimals(std::clamp(value, range.least, range.most), range.decimals);
  };
  for (const bool more : {false, true}) {
    if (button(canvas, steps.column(more ? 1 : 0, 2, canvas.gap()),
               {.id = more ? "step-more" : "step-less",
                .text = named,
                .symbol = more ? Symbol::plus : Symbol::minus,
                .enabled = now.has_value(),
                .repeats = true})) {
      put(*now + (more ? range.step : -range.step));
    }
  }
}

}  // namespace

FigureRange figure_range(Figure what, Units units) {
  const auto row = std::find_if(kFigureRows.begin(), kFigureRows.end(),
                                [&](const FigureRow& r) { return r.what == what; });
  return units == Units::si ? row->si : row->us;
}

std::string figure_text(Figure what, double value, Units units) {
  const FigureRange range = figure_range(what, units);
  return with_decimals(value, range.decimals) + " " + range.unit;
}

void press_figure_key(std::string& typed, char key) {
  if (key == '<') {
    if (!typed.empty()) typed.pop_back();
    return;
  }
  if (key == '-') {
    if (!typed.empty() && typed.front() == '-') {
      typed.erase(0, 1);
    } else {
      typed.insert(0, 1, '-');
    }
    return;
  }
  if (typed.size() >= kMostFigureKeys) return;
  if (key == '.') {
    if (typed.find('.') != std::string::npos) return;
    if (typed.empty() || typed == "-") typed += '0';
    typed += '.';
    return;
  }
  if (key < '0' || key > '9') return;
  if (typed == "0" || typed == "-0") typed.pop_back();
  typed += key;
}

std::optional<double> entered(const FigureEntry& entry, Units units) {
  const auto value = entry.typed.empty() ? entry.guess : typed_number(entry.typed);
  const FigureRange range = figure_range(entry.what, units);
  if (!value || *value < range.least || *value > range.most) return {};
  return value;
}

PanelEnd draw_figure_pad(Stage& stage, const Box& box, FigureEntry& entry,
                         const std::string& title) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  const FigureRange range = figure_range(entry.what, units);
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, title);
  const Box keys = in.cut_left(std::round(in.w() * 0.46F), gap);
  draw_figure_keys(stage, keys, entry, range);
  const Box last = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(19)), gap);
  const Box steps = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const Box says = in.cut_bottom(canvas.height(Face::small) * 2, canvas.mm(1));
  in.y0 = std::max(in.y0, in.y1 - canvas.mm(40));
  canvas.fill(in, canvas.theme().quiet.ground, canvas.mm(1.6));
  canvas.edge(in, canvas.theme().ink, canvas.mm(0.5), canvas.mm(1.6));
  const std::string value =
      entry.typed.empty()
          ? (entry.guess ? with_decimals(*entry.guess, range.decimals) : std::string("\u2013"))
          : entry.typed;
  canvas.text(value + " " + range.unit, in.inset(canvas.mm(2)),
              {.face = Face::huge, .colours = canvas.theme().quiet, .across = Across::middle});
  draw_steps(stage, steps, entry, range);
  const auto good = entered(entry, units);
  const bool blank = entry.typed.empty() && !entry.guess;
  if (!good && !blank) {
    tag(canvas, says, Symbol::mend_sign,
        say(Word::figure_between, with_decimals(range.least, range.decimals),
            with_decimals(range.most, range.decimals) + " " + range.unit),
        Look::mend);
  } else if (blank || entry.typed.empty()) {
    canvas.text(say(blank ? Word::figure_type : Word::figure_guess), says,
                {.face = Face::small, .colours = canvas.on_panel(), .lines = 2});
  }
  return keep_or_cancel(stage, last, good.has_value());
}

namespace {

// Rounded to what the pad can show, so that the book is spared 0.30000000000000004.
double to_micro(double value) {
  return std::round(value * 1e6) / 1e6;
}

}  // namespace

double shown(Volume volume, Units units) {
  return units == Units::si ? in_cubic_metres(volume) : in_cubic_yards(volume);
}
double shown(Length small, Units units) {
  return units == Units::si ? in_millimetres(small) : in_inches(small);
}
double shown(Celsius temperature, Units units) {
  return units == Units::si ? temperature.degrees : temperature.fahrenheit();
}
double shown(MassPerVolume density, Units units) {
  const double kg = in_kilograms_per_m3(density);
  return units == Units::si ? kg : kg * kFoot * kFoot * kFoot / kPoundMass;
}
Volume volume_of(double value, Units units) {
  return units == Units::si ? cubic_metres(value)
                            : cubic_metres(to_micro(in_cubic_metres(cubic_yards(value))));
}
Length small_length_of(double value, Units units) {
  return metres(to_micro(in_metres(units == Units::si ? millimetres(value) : inches(value))));
}
Celsius temperature_of(double value, Units units) {
  return units == Units::si ? celsius(value) : celsius(to_micro(fahrenheit(value).degrees));
}
MassPerVolume density_of(double value, Units units) {
  return kilograms_per_m3(
      units == Units::si ? value : to_micro(value * kPoundMass / (kFoot * kFoot * kFoot)));
}

}  // namespace rb::screens
