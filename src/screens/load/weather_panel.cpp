// The air at the form: its temperature, and humidity and wind where somebody read them.
#include <array>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"
#include "screens/load/truck_panel.h"

namespace rb::screens {

namespace {

void put_weather(AirDraft& draft, Figure what, double value, Units units) {
  if (what == Figure::air_temp) draft.temp = temperature_of(value, units);
  if (what == Figure::humidity) draft.humidity = value;
  if (what == Figure::wind) draft.wind = wind_of(value, units);
}

std::optional<double> weather_of(const AirDraft& draft, Figure what, Units units) {
  if (what == Figure::humidity) return draft.humidity;
  if (what == Figure::wind) {
    return draft.wind ? std::optional{shown(*draft.wind, units)} : std::nullopt;
  }
  return draft.temp ? std::optional{shown(*draft.temp, units)} : std::nullopt;
}

}  // namespace

void draw_air(Stage& stage, const Box& box, AirDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Units units = say.units;
  if (const auto typed = draw_typed(stage, box, draft.figure)) {
    if (typed->value) put_weather(draft, typed->what, *typed->value, units);
    // Without a temperature there is nothing to keep.
    if (typed->end == PanelEnd::cancelled && !draft.temp) stage.open(TrucksDraft{});
    return;
  }
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::air_title));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const Box says = in.cut_bottom(2 * canvas.height(Face::small), canvas.mm(1));
  in.y1 = std::min(in.y1, in.y0 + canvas.mm(30));
  canvas.text(say(Word::air_says), says,
              {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top, .lines = 2});
  constexpr std::array kReadings{Figure::air_temp, Figure::humidity, Figure::wind};
  constexpr std::array kIds{"weather temp", "weather humidity", "weather wind"};
  constexpr std::array kNames{Word::air_temp, Word::air_humidity, Word::air_wind};
  for (std::size_t i = 0; i < kReadings.size(); ++i) {
    const auto value = weather_of(draft, kReadings[i], units);
    if (button(canvas, in.column(static_cast<int>(i), static_cast<int>(kReadings.size()), gap),
               {.id = kIds[i],
                .text = value ? figure_text(kReadings[i], *value, units) : say(kNames[i]),
                .under = say(value ? kNames[i] : Word::not_measured),
                .look = value ? Look::act : Look::quiet,
                .symbol = value ? Symbol::check : Symbol::none,
                .symbol_above = true})) {
      draft.figure = FigureEntry{.what = kReadings[i], .guess = value};
    }
  }
  const PanelEnd end = keep_or_cancel(stage, foot, draft.temp.has_value());
  if (end == PanelEnd::kept) {
    stage.keep(event::AirTemp{*draft.temp, draft.humidity, draft.wind}, draft.at);
  }
  if (end != PanelEnd::open) stage.open(TrucksDraft{});
}

}  // namespace rb::screens
