#include "screens/entry/power_panel.h"

#include "pour/plan/verdicts.h"
#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

// "3 motors on: 12 A of 40 A".
std::string motors_words(const Say& say, const InverterView& inverter) {
  const bool one = inverter.motors_on == 1;
  if (!inverter.drawn) {
    return say(one ? Word::inverter_motor_on : Word::inverter_motors_on, inverter.motors_on);
  }
  const std::string drawn = say.amount(rb::amount(*inverter.drawn));
  const std::string gives = say.amount(rb::amount(inverter.gives));
  return one ? say(Word::inverter_load_one, drawn, gives)
             : say(Word::inverter_load, inverter.motors_on, drawn, gives);
}

void draw_about(Stage& stage, const Box& box, const InverterView& inverter) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Pair ground = canvas.theme().quiet;
  card_ground(canvas, box);
  Box in = box.inset(canvas.mm(3.2), canvas.mm(1));
  const std::string speed = inverter.speed ? say.amount(rb::amount(*inverter.speed))
                                           : std::string{say(Word::inverter_untold)};
  canvas.text(inverter.inverter.text + " \u00B7 " + speed, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = ground, .free_text = true});
  in.y1 = std::min(in.y1, in.y0 + canvas.height(Face::small) + canvas.mm(0.8));
  if (inverter.tripped) {
    tag(canvas, in, Symbol::mend_sign,
        say(Word::inverter_tripped_at, say.clock_short(*inverter.tripped)), Look::mend);
  } else {
    const std::string on = motors_words(say, inverter);
    canvas.text(on, in, {.face = Face::small, .colours = ground});
  }
}

void draw_line(Stage& stage, const Box& box, const InverterView& inverter, bool can) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const float wide = canvas.mm(27);
  Box about = box;
  const auto tapped = [&](const char* id, Word word, Symbol symbol, bool enabled) {
    return button(canvas, about.cut_right(wide, gap),
                  {.id = id + (" " + inverter.inverter.text),
                   .text = stage.say(word),
                   .said = inverter.inverter.text,
                   .symbol = symbol,
                   .face = Face::small,
                   .enabled = enabled,
                   .symbol_above = true});
  };
  if (tapped("trip", Word::inverter_trip, Symbol::stop_sign, can && inverter.motors_on > 0)) {
    stage.keep(event::Trip{inverter.inverter}, stage.tapped());
  }
  if (tapped("speed", Word::inverter_speed, Symbol::pencil, can)) {
    SpeedDraft speed{.inverter = inverter.inverter, .at = stage.tapped()};
    if (inverter.speed) speed.figure.guess = in_vibrations_per_minute(*inverter.speed);
    stage.open(std::move(speed));
  }
  draw_about(stage, about, inverter);
}

}  // namespace

void draw_inverters(Stage& stage, const Box& box, InvertersDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, stage.say(Word::inverters));
  const float tall = canvas.mm(kListLineMm);
  const Pages pages = turn_pages(stage, in, view.inverters.size(), draft.page, "inverters", tall);
  if (view.inverters.empty()) {
    canvas.text(stage.say(Word::inverters_none), pages.room,
                {.colours = canvas.soft(), .down = Down::top, .lines = 2});
  }
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.inverters.size(); ++i) {
    const float y = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    draw_line(stage, {pages.room.x0, y, pages.room.x1, y + tall}, view.inverters[pages.first + i],
              !view.closed);
  }
}

void draw_speed(Stage& stage, const Box& box, SpeedDraft& draft, const PourView& view,
                const Plan& plan) {
  const Say& say = stage.say;
  PadBeside beside;
  for (const Frequency& speed : view.last_speeds) {
    beside.choices.push_back(in_vibrations_per_minute(speed));
  }
  const auto figure = entered(draft.figure, say.units);
  const auto verdict =
      figure ? judge_speed(vibrations_per_minute(*figure), plan.motor_type) : SpeedVerdict::within;
  if (verdict == SpeedVerdict::fast) {
    beside.doubt = say(Word::inverter_speed_over, say.amount(amount(plan.motor_type->top_speed)));
  } else if (verdict == SpeedVerdict::slow) {
    beside.doubt = say(Word::inverter_speed_under, say.amount(amount(kSlowestSpeed)));
  }
  const PanelEnd end =
      draw_figure_pad(stage, box, draft.figure,
                      draft.inverter.text + " \u00B7 " + say(Word::inverter_speed_title), beside);
  if (end == PanelEnd::open) return;
  if (end == PanelEnd::kept) {
    // What motors are not to turn at is asked for once more: a slip of the finger overdrives them.
    if (verdict != SpeedVerdict::within && draft.asked != figure) {
      draft.asked = figure;
      return;
    }
    stage.keep(event::Speed{draft.inverter, vibrations_per_minute(*figure)}, draft.at);
  }
  stage.open(InvertersDraft{});
}

}  // namespace rb::screens
