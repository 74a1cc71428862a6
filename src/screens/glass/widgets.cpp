#include "screens/glass/widgets.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {
constexpr double kRadiusMm = 1.6;
}

Pair pair_of(const Theme& theme, Look look) {
  switch (look) {
    case Look::quiet:
      return theme.quiet;
    case Look::act:
      return theme.act;
    case Look::run:
      return theme.run;
    case Look::live:
      return theme.live;
    case Look::stop:
      return theme.stop;
    case Look::mend:
      return theme.mend;
    case Look::well:
      return theme.well;
    case Look::off:
      return theme.off;
  }
  return theme.quiet;
}

void card_ground(Canvas& canvas, const Box& box) {
  canvas.fill(box, canvas.theme().quiet.ground, canvas.mm(1.6));
  canvas.edge(box, canvas.theme().line, canvas.mm(0.25), canvas.mm(1.6));
}

namespace {

void button_ground(Canvas& canvas, const Box& box, const ButtonSpec& spec, const Pair& pair) {
  const float radius = canvas.mm(kRadiusMm);
  canvas.fill(box, pair.ground, radius);
  if (spec.look == Look::live) {
    // A striped edge that moves: unmistakable in grey, too.
    const float band = canvas.mm(2.2);
    canvas.hatch({box.x0, box.y0, box.x1, box.y0 + band}, pair.ink, band * 1.6F, true);
    canvas.hatch({box.x0, box.y1 - band, box.x1, box.y1}, pair.ink, band * 1.6F, true);
    canvas.edge(box, pair.ink, canvas.mm(0.5), radius);
  } else if (!spec.enabled) {
    canvas.edge(box, canvas.theme().line, canvas.mm(0.25), radius);
  } else if (spec.look != Look::act) {
    // A light fill is bounded by its edge, in any light.
    canvas.edge(box, spec.look == Look::stop ? canvas.theme().ink : pair.ink, canvas.mm(0.4),
                radius);
  }
  if (spec.enabled && canvas.pressed(spec.id)) {
    canvas.edge(box, pair.ink, canvas.mm(1.2), radius);
  }
}

}  // namespace

bool button(Canvas& canvas, const Box& box, const ButtonSpec& spec) {
  std::string words = spec.text;
  if (!spec.said.empty()) words += " " + spec.said;
  if (!spec.under.empty()) words += " " + spec.under;
  const bool tapped = canvas.target(spec.id, box, words, spec.enabled, spec.repeats);
  const Pair pair = pair_of(canvas.theme(), spec.enabled ? spec.look : Look::off);
  button_ground(canvas, box, spec, pair);
  Box in = box.inset(canvas.mm(1.2), canvas.mm(spec.look == Look::live ? 2.4 : 0.8));
  const float space = canvas.mm(1.4);
  if (spec.symbol != Symbol::none && spec.text.empty()) {
    const float side = std::min({in.w(), in.h(), canvas.mm(8)});
    const Point m = in.middle();
    canvas.symbol(spec.symbol, {m.x - side / 2, m.y - side / 2, m.x + side / 2, m.y + side / 2},
                  pair.ink);
    return tapped;
  }
  TextStyle text{.face = spec.face,
                 .colours = pair,
                 .across = Across::middle,
                 .lines = 2,
                 .free_text = spec.free_text};
  // A sign beside the words takes of their width.
  const bool beside = spec.symbol != Symbol::none && !spec.symbol_above;
  const float sign =
      beside ? std::min({canvas.mm(spec.face == Face::title ? 8 : 6), in.h(), in.w() / 3}) : 0.0F;
  const float words_room = beside ? in.w() - sign - space : in.w();
  const bool under_breaks = canvas.width(spec.under, Face::small) > words_room;
  const float under_tall =
      spec.under.empty() ? 0.0F : canvas.height(Face::small) * (under_breaks ? 2.0F : 1.0F);
  if (spec.symbol != Symbol::none && spec.symbol_above) {
    // Words alone may go in two lines where they are wider than the button.
    const bool breaks = spec.under.empty() && canvas.width(spec.text, spec.face) > in.w();
    const float words_tall = canvas.height(spec.face) * (breaks ? 2.0F : 1.0F) + under_tall;
    const float side = std::min(canvas.mm(7), in.h() - words_tall);
    if (side > canvas.mm(3)) {
      const float top = in.y0 + (in.h() - words_tall - side) / 2;
      canvas.symbol(spec.symbol, {in.x0, top, in.x1, top + side}, pair.ink);
      in.y0 = top + side;
      in.y1 = in.y0 + words_tall;
    }
    text.lines = breaks ? 2 : 1;
  } else if (spec.symbol != Symbol::none) {
    const float words_wide =
        std::max(canvas.width(spec.text, spec.face), canvas.width(spec.under, Face::small));
    const float together = std::min(in.w(), sign + space + words_wide);
    const float left = in.x0 + (in.w() - together) / 2;
    const float mid = in.middle().y;
    canvas.symbol(spec.symbol, {left, mid - sign / 2, left + sign, mid + sign / 2}, pair.ink);
    in.x0 = left + sign + space;
    text.across = Across::left;
    if (together < in.w()) in.x1 = in.x0 + words_wide + 1;
  }
  if (spec.under.empty()) {
    canvas.text(spec.text, in, text);
  } else {
    const float big = canvas.height(spec.face);
    const float spare = std::max(0.0F, (in.h() - under_tall - big) / 2);
    Box first = in;
    first.y0 += spare;
    first.y1 = first.y0 + big;
    Box second = in;
    second.y0 = first.y1;
    second.y1 = in.y1;
    text.lines = 1;
    canvas.text(spec.text, first, text);
    text.face = Face::small;
    text.lines = 2;
    text.down = Down::top;
    canvas.text(spec.under, second, text);
  }
  return tapped;
}

void panel(Canvas& canvas, const Box& box) {
  canvas.fill(box, canvas.theme().panel, canvas.mm(kRadiusMm));
}

void heading(Canvas& canvas, Box& box, std::string_view text) {
  const float tall = canvas.height(Face::small) + canvas.mm(0.6);
  const Box line = box.cut_top(tall, canvas.mm(1));
  canvas.text(text, line, {.face = Face::small, .colours = canvas.soft(), .free_text = false});
  canvas.line({line.x0, line.y1}, {line.x1, line.y1}, canvas.theme().line, canvas.mm(0.2));
}

Box tag(Canvas& canvas, const Box& room, Symbol symbol, std::string_view text, Look look, Face face,
        bool free_text) {
  const Pair pair = pair_of(canvas.theme(), look);
  const float pad = canvas.mm(0.9);
  const float line = canvas.height(face);
  const float sign = symbol == Symbol::none ? 0 : line * 0.8F + pad;
  const float wanted = canvas.width(text, face) + sign + 2 * pad;
  const float wide = std::min(room.w(), wanted);
  // What does not go in one line goes in two, or in more, where there is height for it; lines
  // broken at spaces are not filled to their ends.
  const float inner = std::max(room.w() - sign - 2 * pad, 1.0F);
  const float filled = canvas.width(text, face) / inner;
  const int needed = wanted <= room.w() ? 1
                     : filled <= 1.8F   ? 2
                                        : 1 + static_cast<int>(filled * 1.1F);
  const int lines = std::clamp(needed, 1, std::max(1, static_cast<int>(room.h() / line)));
  const float tall = line * static_cast<float>(lines);
  const Box box{room.x0, std::round(room.middle().y - tall / 2), room.x0 + wide,
                std::round(room.middle().y - tall / 2) + tall};
  canvas.fill(box, pair.ground, canvas.mm(0.8));
  Box in = box.inset(pad, 0);
  if (symbol != Symbol::none) {
    const Box at = in.cut_left(line * 0.8F, pad);
    canvas.symbol(symbol, at.inset(0, (tall - line * 0.8F) / 2), pair.ink);
  }
  canvas.text(text, in, {.face = face, .colours = pair, .lines = lines, .free_text = free_text});
  return box;
}

void band_bar(Canvas& canvas, const Box& box, double value, double low, double high, Look look) {
  const Theme& theme = canvas.theme();
  const double full = std::max(high * 1.25, 1.0);
  const auto at = [&](double v) {
    return box.x0 + box.w() * static_cast<float>(std::clamp(v / full, 0.0, 1.0));
  };
  const float radius = canvas.mm(0.6);
  canvas.fill(box, theme.off.ground, radius);
  canvas.fill({at(low), box.y0, at(high), box.y1}, theme.well.ground);
  const Pair pair = pair_of(theme, look);
  const Box done{box.x0, box.y0, at(value), box.y1};
  canvas.fill(done, look == Look::quiet ? theme.ink_soft : pair.ground, radius);
  canvas.edge(box, theme.ink_soft, canvas.mm(0.25), radius);
  // Posts stand out over and under the bar, so the band is a shape and not a shade.
  const float post = canvas.mm(0.6);
  for (const double v : {low, high}) {
    canvas.fill(
        {at(v) - post / 2, box.y0 - canvas.mm(0.8), at(v) + post / 2, box.y1 + canvas.mm(0.8)},
        theme.ink);
  }
}

void gauge(Canvas& canvas, const Box& box, double value, double limit, Look look) {
  const Theme& theme = canvas.theme();
  const double full = std::max(limit * 1.4, 1e-9);
  const auto at = [&](double v) {
    return box.x0 + box.w() * static_cast<float>(std::clamp(v / full, 0.0, 1.0));
  };
  const float radius = canvas.mm(0.6);
  canvas.fill(box, theme.off.ground, radius);
  const Box done{box.x0, box.y0, at(value), box.y1};
  canvas.fill(done, look == Look::quiet ? theme.ink_soft : pair_of(theme, look).ground, radius);
  // Over the limit the bar is striped, too.
  if (value > limit)
    canvas.hatch({at(limit), box.y0, done.x1, box.y1}, theme.ink, canvas.mm(1.6), false);
  canvas.edge(box, theme.ink_soft, canvas.mm(0.25), radius);
  const float post = canvas.mm(0.8);
  canvas.fill({at(limit) - post / 2, box.y0 - canvas.mm(0.6), at(limit) + post / 2,
               box.y1 + canvas.mm(0.6)},
              theme.ink);
}

}  // namespace rb::screens
