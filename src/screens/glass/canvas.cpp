#include "screens/glass/canvas.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace rb::screens {

namespace {

ImU32 packed(Colour c) {
  return IM_COL32(c.r, c.g, c.b, 255);
}
ImVec2 vec(Point p) {
  return {p.x, p.y};
}

struct Line {
  std::string text;
  float width = 0;
};

float measure(ImFont& font, std::string_view text) {
  return font.CalcTextSizeA(font.FontSize, FLT_MAX, 0, text.data(), text.data() + text.size()).x;
}

/// Breaks text at spaces (and at newlines) into lines no wider than `width`.
std::vector<Line> broken(ImFont& font, std::string_view text, float width) {
  std::vector<Line> lines;
  while (!text.empty()) {
    std::size_t take = std::min(text.find('\n'), text.size());
    while (measure(font, text.substr(0, take)) > width) {
      const std::size_t space = take == 0 ? std::string_view::npos : text.rfind(' ', take - 1);
      if (space == std::string_view::npos || space == 0) break;
      take = space;
    }
    const std::string_view part = text.substr(0, take);
    lines.push_back({std::string(part), measure(font, part)});
    text.remove_prefix(take);
    if (!text.empty()) text.remove_prefix(1);
  }
  return lines;
}

bool fits(ImFont& font, const std::vector<Line>& lines, const Box& room, int most) {
  // A hair of allowance, so that rounding to pixels is not called clipping.
  if (static_cast<int>(lines.size()) > most) return false;
  if (font.FontSize * static_cast<float>(lines.size()) > room.h() + 1.0F) return false;
  return std::all_of(lines.begin(), lines.end(),
                     [&](const Line& l) { return l.width <= room.w() + 0.5F; });
}

/// Cuts the last line that may stand and ends it with an ellipsis.
void shorten(ImFont& font, std::vector<Line>& lines, const Box& room, int most) {
  const int room_for = std::max(1, static_cast<int>((room.h() + 1.0F) / font.FontSize));
  const auto keep = static_cast<std::size_t>(std::min(most, room_for));
  const bool cut = lines.size() > keep;
  if (cut) lines.resize(keep);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Line& line = lines[i];
    const bool last_cut = cut && i + 1 == lines.size();
    if (line.width <= room.w() && !last_cut) continue;
    std::string text = line.text;
    std::string shown = text + "\u2026";
    while (!text.empty() && measure(font, shown) > room.w()) {
      do {
        text.pop_back();
      } while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U);
      if (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0xC0U) {
        text.pop_back();
      }
      shown = text + "\u2026";
    }
    line = {shown, measure(font, shown)};
  }
}

}  // namespace

Canvas::Canvas(ImDrawList& list, const Fonts& fonts, const Theme& theme, const Scale& scale,
               Probe& probe, const std::optional<Tap>& tap, std::string pressed, int second)
    : list_(list),
      fonts_(fonts),
      theme_(theme),
      scale_(scale),
      probe_(probe),
      tap_(tap),
      pressed_(std::move(pressed)),
      second_(second) {}

void Canvas::fill(const Box& box, Colour colour, float radius) {
  if (!box.empty()) {
    list_.AddRectFilled({box.x0, box.y0}, {box.x1, box.y1}, packed(colour), radius);
  }
}

void Canvas::edge(const Box& box, Colour colour, float thickness, float radius) {
  const Box in = box.inset(thickness / 2);
  list_.AddRect({in.x0, in.y0}, {in.x1, in.y1}, packed(colour), radius, 0, thickness);
}

void Canvas::line(Point from, Point to, Colour colour, float thickness) {
  list_.AddLine(vec(from), vec(to), packed(colour), thickness);
}

void Canvas::dashes(Point from, Point to, Colour colour, float thickness, float dash) {
  const float length = std::hypot(to.x - from.x, to.y - from.y);
  const int n = static_cast<int>(length / (2 * dash)) + 1;
  for (int i = 0; i < n; ++i) {
    const float a = std::min(1.0F, static_cast<float>(2 * i) * dash / std::max(length, 1.0F));
    const float b = std::min(1.0F, static_cast<float>(2 * i + 1) * dash / std::max(length, 1.0F));
    line({from.x + (to.x - from.x) * a, from.y + (to.y - from.y) * a},
         {from.x + (to.x - from.x) * b, from.y + (to.y - from.y) * b}, colour, thickness);
  }
}

void Canvas::hatch(const Box& box, Colour stripe, float pitch, bool moving) {
  clip(box);
  const float shift = moving ? static_cast<float>(second_ % 4) * pitch / 4 : 0.0F;
  for (float x = box.x0 - box.h() - pitch + shift; x < box.x1 + pitch; x += pitch) {
    line({x, box.y1}, {x + box.h(), box.y0}, stripe, pitch * 0.36F);
  }
  unclip();
}

void Canvas::dot(Point middle, float radius, Colour colour) {
  list_.AddCircleFilled(vec(middle), radius, packed(colour));
}

void Canvas::triangle(Point a, Point b, Point c, Colour colour) {
  list_.AddTriangleFilled(vec(a), vec(b), vec(c), packed(colour));
}

void Canvas::clip(const Box& box) {
  list_.PushClipRect({box.x0, box.y0}, {box.x1, box.y1}, true);
}

void Canvas::unclip() {
  list_.PopClipRect();
}

float Canvas::width(std::string_view text, Face face) const {
  return measure(*fonts_[face], text);
}

float Canvas::height(Face face) const {
  return fonts_[face]->FontSize;
}

Box Canvas::text(std::string_view text, const Box& room, const TextStyle& style) {
  if (text.empty()) return {room.x0, room.y0, room.x0, room.y0};
  Face face = style.face;
  std::vector<Line> lines;
  bool whole = false;
  for (;;) {
    ImFont& font = *fonts_[face];
    lines = style.lines > 1 || text.find('\n') != std::string_view::npos
                ? broken(font, text, room.w())
                : std::vector<Line>{{std::string(text), measure(font, text)}};
    whole = fits(font, lines, room, style.lines);
    if (whole || face == smaller(face)) break;
    face = smaller(face);
  }
  ImFont& font = *fonts_[face];
  if (!whole) shorten(font, lines, room, style.lines);
  const float tall = font.FontSize * static_cast<float>(lines.size());
  float y = room.y0;
  if (style.down == Down::middle) y += (room.h() - tall) / 2;
  if (style.down == Down::bottom) y = room.y1 - tall;
  y = std::round(y);
  Box took{room.x1, y, room.x0, y + tall};
  for (const Line& line : lines) {
    float x = room.x0;
    if (style.across == Across::middle) x += (room.w() - line.width) / 2;
    if (style.across == Across::right) x = room.x1 - line.width;
    x = std::round(x);
    list_.AddText(&font, font.FontSize, {x, y}, packed(style.colours.ink), line.text.data(),
                  line.text.data() + line.text.size());
    took.x0 = std::min(took.x0, x);
    took.x1 = std::max(took.x1, x + line.width);
    y += font.FontSize;
  }
  probe_.texts.push_back({std::string(text), took, room, style.colours.ink, style.colours.ground,
                          whole, style.free_text});
  return took;
}

bool Canvas::target(const std::string& id, const Box& box, std::string_view text, bool enabled,
                    bool repeats) {
  const ImVec2 from = list_.GetClipRectMin();
  const ImVec2 to = list_.GetClipRectMax();
  probe_.targets.push_back(
      {{id, box, enabled, repeats, on_}, std::string(text), {from.x, from.y, to.x, to.y}});
  return enabled && tap_ && tap_->id == id;
}

bool Canvas::drag_target(const std::string& id, const Box& box, std::string_view text,
                         bool enabled) {
  const bool tapped = target(id, box, text, enabled);
  probe_.targets.back().target.drags = true;
  return tapped;
}

}  // namespace rb::screens
