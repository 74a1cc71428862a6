#include "screens/live/pressure_panel.h"

#include <algorithm>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

// The curve from the base up; the rating as a line across it.
void draw_curve(Stage& stage, const Box& box, const PressureView& bay, Length height) {
  Canvas& canvas = stage.canvas;
  const Theme& theme = canvas.theme();
  const Say& say = stage.say;
  canvas.fill(box, theme.quiet.ground, canvas.mm(1.6));
  const Box in = box.inset(canvas.mm(3), canvas.mm(2.5));
  const float small = canvas.height(Face::small);
  const Box face{in.x0, in.y0 + small, in.x1, in.y1 - small};
  const Pressure most = std::max(bay.greatest.pressure, bay.rating.value_or(Pressure{})) * 1.15;
  const auto x = [&](Pressure p) { return face.x0 + static_cast<float>(p / most) * face.w(); };
  const auto y = [&](Length z) { return face.y1 - static_cast<float>(z / height) * face.h(); };
  for (const trade::PressurePart& part : bay.profile.parts) {
    // Loads drawn as lines from the form to the curve, close together where full liquid presses.
    const bool liquid = part.why != trade::PressureFrom::method;
    const float pitch = canvas.mm(liquid ? 1.6 : 4.5);
    for (float at = y(part.from) - pitch; at > y(part.to); at -= pitch) {
      const float share = (y(part.from) - at) / (y(part.from) - y(part.to));
      const float end = x(part.lower) + share * (x(part.upper) - x(part.lower));
      canvas.line({face.x0, at}, {end, at}, theme.ink_soft, canvas.mm(0.25));
    }
    canvas.line({x(part.lower), y(part.from)}, {x(part.upper), y(part.to)}, theme.ink,
                canvas.mm(0.9));
  }
  canvas.line({face.x0, face.y0}, {face.x0, face.y1}, theme.line, canvas.mm(0.4));
  canvas.line({face.x0, face.y1}, {face.x1, face.y1}, theme.line, canvas.mm(0.4));
  canvas.dashes({face.x0, y(bay.top)}, {face.x1, y(bay.top)}, theme.line, canvas.mm(0.3),
                canvas.mm(1));
  canvas.text(say(Word::pressure_top, say.height(bay.top)), {in.x0, in.y0, in.x1, in.y0 + small},
              {.face = Face::small, .colours = theme.quiet});
  if (bay.rating) {
    canvas.dashes({x(*bay.rating), face.y0}, {x(*bay.rating), face.y1}, theme.stop.ground,
                  canvas.mm(0.9), canvas.mm(2));
    canvas.text(say(Word::pressure_rating, say.pressure(*bay.rating)),
                {in.x0, in.y1 - small, in.x1, in.y1},
                {.face = Face::small, .colours = theme.quiet, .across = Across::right});
  }
  canvas.dot({x(bay.greatest.pressure), y(bay.greatest.z)}, canvas.mm(1.2), theme.ink);
}

std::string whence(const Say& say, const PressureView& bay) {
  if (bay.greatest.why == trade::PressureFrom::running_row) {
    std::string rows;
    for (const std::string& row : bay.rows) rows += (rows.empty() ? "" : ", ") + row;
    return say(Word::pressure_from_rows, rows);
  }
  if (bay.no_method) return say(Word::pressure_no_method);
  return say(Word::pressure_from_method, say.amount(amount(bay.rise)));
}

}  // namespace

void draw_pressure(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box in = panel_with_back(stage, box, say(Word::pressure_title));
  if (view.pressures.empty()) {
    canvas.text(say(Word::pressure_none), in,
                {.colours = canvas.soft(), .down = Down::top, .lines = 2});
    return;
  }
  const PressureView& bay = view.pressures[0];
  Box words = in.cut_right(std::round(in.w() * 0.44F), canvas.gap());
  draw_curve(stage, in, bay, view.elevation.height);
  const auto tell = [&](const std::string& text, Face face, int lines, Pair colours) {
    canvas.text(text,
                words.cut_top(static_cast<float>(lines) * canvas.height(face), canvas.mm(1.5)),
                {.face = face, .colours = colours, .down = Down::top, .lines = lines});
  };
  tell(say.pressure(bay.greatest.pressure), Face::huge, 1, canvas.on_panel());
  tell(say(Word::pressure_where, say.height(bay.greatest.z), bay.bay + 1), Face::strong, 1,
       canvas.on_panel());
  tell(whence(say, bay), Face::small, 3, canvas.on_panel());
  if (!bay.rating) {
    tell(say(Word::pressure_unrated), Face::small, 2, canvas.on_panel());
  } else {
    const Pressure left = *bay.rating - bay.greatest.pressure;
    const Box room = words.cut_top(canvas.height(Face::strong) * 1.5F, canvas.mm(1.5));
    if (bay.over) {
      tag(canvas, room, Symbol::stop_sign, say(Word::pressure_over, say.pressure(-left)),
          Look::stop);
    } else {
      canvas.text(say(Word::pressure_left, say.pressure(left)), room,
                  {.face = Face::strong, .colours = canvas.on_panel()});
    }
  }
  canvas.text(say(Word::pressure_caution), words,
              {.face = Face::small, .colours = canvas.soft(), .down = Down::bottom, .lines = 4});
}

}  // namespace rb::screens
