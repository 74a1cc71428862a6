#include "screens/entry/figure_pad.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr std::size_t kMostFigureKeys = 7;

// What a pad may take, in the measure's script unit: wider than any site sees, narrow enough to
// catch a wrong unit.
struct FigureRow {
  Figure what;
  Word title;
  Measure measure;
  double least, most;
  double step_si = 0, step_us = 0;  ///< coarser than the measure's own
  bool may_be_negative = false;
};

constexpr std::array kFigureRows{
    FigureRow{Figure::volume, Word::truck_volume, Measure::volume, 0.1, 20},
    FigureRow{Figure::slump, Word::test_slump, Measure::small_length, 0, 0.3},
    FigureRow{Figure::concrete_temp, Word::test_temp, Measure::temperature, 0, 60},
    FigureRow{Figure::air, Word::test_air, Measure::percent, 0, 20},
    FigureRow{Figure::density, Word::test_density, Measure::density, 1000, 5000},
    FigureRow{Figure::air_temp, Word::air_temp_title, Measure::temperature, -40, 60, 1, 1, true},
    FigureRow{Figure::spacing, Word::insert_spacing, Measure::small_length, 0.05, 2, 50, 2},
    FigureRow{Figure::each, Word::insert_seconds, Measure::span, 1, 300},
    FigureRow{Figure::depth, Word::insert_depth, Measure::small_length, 0, 1, 50, 1},
    FigureRow{Figure::points, Word::insert_points, Measure::count, 1, 10000, 1, 1},
    FigureRow{Figure::heads, Word::insert_heads, Measure::count, 1, 100, 1, 1},
    FigureRow{Figure::hardening, Word::after_temp, Measure::temperature, 0, 100},
    FigureRow{Figure::humidity, Word::air_humidity, Measure::percent, 0, 100, 5, 5},
    FigureRow{Figure::wind, Word::air_wind, Measure::wind, 0, 50},
    FigureRow{Figure::part, Word::load_part, Measure::volume, 0.1, 20},
    FigureRow{Figure::returned, Word::load_returned, Measure::volume, 0, 20},
    FigureRow{Figure::age_days, Word::specimen_age, Measure::factor, 0.1, 3650, 1, 1},
    FigureRow{Figure::broke_at, Word::specimen_broke, Measure::strength, 0, 200},
    FigureRow{Figure::blemish_wide, Word::blemish_wide, Measure::small_length, 0.005, 90, 50, 2},
    FigureRow{Figure::blemish_high, Word::blemish_high, Measure::small_length, 0.005, 90, 50, 2},
    FigureRow{Figure::blemish_deep, Word::blemish_deep, Measure::small_length, 0.001, 4, 5, 0.25},
    FigureRow{Figure::speed, Word::inverter_speed_title, Measure::speed, 600, 20000, 100, 100},
};

const FigureRow& row_of(Figure what) {
  return *std::find_if(kFigureRows.begin(), kFigureRows.end(),
                       [&](const FigureRow& r) { return r.what == what; });
}

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

void draw_choices(Stage& stage, const Box& row, FigureEntry& entry, const FigureRange& range,
                  const std::vector<double>& choices) {
  Canvas& canvas = stage.canvas;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    const std::string figure = with_decimals(choices[i], range.decimals);
    if (button(canvas,
               row.column(static_cast<int>(i), static_cast<int>(choices.size()), canvas.gap()),
               {.id = "choice " + figure, .text = figure, .face = Face::strong})) {
      entry.typed = figure;
    }
  }
}

}  // namespace

FigureRange figure_range(Figure what, Units units) {
  const FigureRow& row = row_of(what);
  const int places = decimals(row.measure, units);
  // Inwards to what can be typed, so that both ends are taken.
  const double scale = std::pow(10.0, places);
  const double own_step = units == Units::si ? row.step_si : row.step_us;
  return {
      row.title,
      unit_text(row.measure, units),
      places,
      std::ceil(rb::shown(row.least, row.measure, units) * scale - 1e-6) / scale + 0.0,  // no -0
      std::floor(rb::shown(row.most, row.measure, units) * scale + 1e-6) / scale,
      own_step > 0 ? own_step : entry_step(row.measure, units),
      row.may_be_negative};
}

std::string figure_text(Figure what, double value, Units units) {
  const FigureRange range = figure_range(what, units);
  const std::string number = with_decimals(value, range.decimals);
  return *range.unit == '\0' ? number : number + " " + range.unit;
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

PanelEnd draw_figure_pad(Stage& stage, const Box& box, FigureEntry& entry, const std::string& title,
                         const PadBeside& beside) {
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
  if (beside.choices.empty()) {
    draw_steps(stage, steps, entry, range);
  } else {
    draw_choices(stage, steps, entry, range, beside.choices);
  }
  const auto good = entered(entry, units);
  const bool blank = entry.typed.empty() && !entry.guess;
  if (!good && !blank) {
    tag(canvas, says, Symbol::mend_sign,
        say(Word::figure_between, fmt::format("{:g}", range.least),
            fmt::format("{:g} {}", range.most, range.unit)),
        Look::mend);
  } else if (good && !beside.doubt.empty()) {
    tag(canvas, says, Symbol::mend_sign, beside.doubt, Look::mend);
  } else if (blank || entry.typed.empty()) {
    canvas.text(say(blank ? Word::figure_type : Word::figure_guess), says,
                {.face = Face::small, .colours = canvas.on_panel(), .lines = 2});
  }
  return keep_or_cancel(stage, last, good.has_value());
}

std::optional<FigureTyped> draw_typed(Stage& stage, const Box& box,
                                      std::optional<FigureEntry>& figure, const std::string& of) {
  if (!figure) return std::nullopt;
  FigureTyped typed{.what = figure->what};
  const std::string title = stage.say(figure_range(typed.what, stage.say.units).title);
  typed.end = draw_figure_pad(stage, box, *figure, of.empty() ? title : of + " \u00B7 " + title);
  if (typed.end == PanelEnd::kept) typed.value = entered(*figure, stage.say.units);
  if (typed.end != PanelEnd::open) figure.reset();
  return typed;
}

double shown(Volume volume, Units units) {
  return rb::shown(amount(volume).si, Measure::volume, units);
}
double shown(Length small, Units units) {
  return rb::shown(amount(small).si, Measure::small_length, units);
}
double shown(Celsius temperature, Units units) {
  return rb::shown(amount(temperature).si, Measure::temperature, units);
}
double shown(MassPerVolume density, Units units) {
  return rb::shown(amount(density).si, Measure::density, units);
}
Volume volume_of(double value, Units units) {
  return cubic_metres(from_shown(value, Measure::volume, units));
}
Length small_length_of(double value, Units units) {
  return metres(from_shown(value, Measure::small_length, units));
}
Celsius temperature_of(double value, Units units) {
  return celsius(from_shown(value, Measure::temperature, units));
}
double shown(Velocity wind, Units units) {
  return rb::shown(in_metres_per_second(wind), Measure::wind, units);
}
double shown(Pressure strength, Units units) {
  return rb::shown(in_megapascals(strength), Measure::strength, units);
}
Velocity wind_of(double value, Units units) {
  return metres_per_second(from_shown(value, Measure::wind, units));
}
Pressure strength_of(double value, Units units) {
  return megapascals(from_shown(value, Measure::strength, units));
}
MassPerVolume density_of(double value, Units units) {
  return kilograms_per_m3(from_shown(value, Measure::density, units));
}

}  // namespace rb::screens
