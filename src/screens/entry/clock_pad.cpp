#include "screens/entry/clock_pad.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr std::size_t kDigits = 4;

std::string as_clock(const std::string& typed) {
  std::string shown = typed;
  shown.resize(kDigits, '_');
  return shown.insert(2, ":");
}

}  // namespace

std::optional<Moment> typed_clock(const std::string& typed, Moment latest,
                                  std::chrono::minutes utc_offset) {
  if (typed.size() != kDigits) return std::nullopt;
  const int figure = std::stoi(typed);
  const int hour = figure / 100;
  const int minute = figure % 100;
  if (hour > 23 || minute > 59) return std::nullopt;
  const auto day = parse_day(day_text(latest, utc_offset), utc_offset);
  if (!day) return std::nullopt;
  const Moment at = after(*day, hours(hour) + seconds(60.0 * minute));
  return at <= latest ? at : after(at, -hours(24));
}

PanelEnd draw_clock_pad(Stage& stage, const Box& box, const std::string& title, std::string& typed,
                        Moment latest) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, title);
  const Box keys = in.cut_left(std::round(in.w() * 0.5F), gap);
  draw_digits(stage, keys, typed, kDigits);
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(19)), gap);
  const Box figure = in.cut_top(canvas.mm(20), canvas.mm(1));
  canvas.fill(figure, canvas.theme().quiet.ground, canvas.mm(1.6));
  canvas.edge(figure, canvas.theme().ink, canvas.mm(0.5), canvas.mm(1.6));
  canvas.text(as_clock(typed), figure.inset(canvas.mm(2)),
              {.face = Face::huge, .colours = canvas.theme().quiet, .across = Across::middle});
  const auto at = typed_clock(typed, latest, say.utc_offset);
  if (at) {
    canvas.text(day_text(*at, say.utc_offset), in,
                {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top});
  } else if (typed.size() == kDigits) {
    tag(canvas, in.cut_top(2 * canvas.height(Face::small)), Symbol::mend_sign,
        say(Word::clock_none), Look::mend);
  }
  return keep_or_cancel(stage, foot, at.has_value());
}

}  // namespace rb::screens
