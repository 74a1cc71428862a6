#include "screens/review/face_drawing.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {

constexpr double kMarkMm = 4.6;    // across a numbered mark
constexpr double kNearMm = 5;      // a finger this near a mark asks for it
constexpr double kStripeMm = 2.2;  // between stripes

Colour mixed_of(Colour a, Colour b, double share) {
  const auto part = [&](std::uint8_t from, std::uint8_t to) {
    return static_cast<std::uint8_t>(std::lround(from + (to - from) * share));
  };
  return {part(a.r, b.r), part(a.g, b.g), part(a.b, b.b)};
}

struct LookColours {
  Colour ground, stripe;
};

LookColours colours_of(const Canvas& canvas, FaceShading look) {
  const bool sun = canvas.theme().page.r > 0x80;
  const Colour light = sun ? rgb(0xE4E2DA) : rgb(0xA6AFB2);
  const Colour dark = sun ? rgb(0x2A3135) : rgb(0x232A2E);
  const double share = static_cast<double>(look.shade) / kMostShade;
  return {mixed_of(light, dark, share), share > 0.5 ? light : dark};
}

void draw_look(Canvas& canvas, const Box& box, FaceShading look) {
  const LookColours colours = colours_of(canvas, look);
  canvas.fill(box, colours.ground);
  const float pitch = canvas.mm(kStripeMm);
  if (look.pattern == FacePattern::plain || box.w() < 2 || box.h() < 2) return;
  if (look.pattern == FacePattern::slanted) {
    canvas.hatch(box, colours.stripe, pitch, false);
    return;
  }
  for (float y = std::ceil(box.y0 / pitch) * pitch; y < box.y1; y += pitch) {
    canvas.line({box.x0, y}, {box.x1, y}, colours.stripe, canvas.mm(0.3));
  }
}

class FaceDrawing {
 public:
  FaceDrawing(Stage& stage, const Box& box, const FaceMap& view)
      : stage_(stage), canvas_(stage.canvas), view_(view), room_(box) {
    const auto length = static_cast<float>(std::max(in_metres(view.length), 0.1));
    const auto height = static_cast<float>(std::max(in_metres(view.height), 0.1));
    const Box in = box.inset(canvas_.mm(1.5));
    scale_ = std::min(in.w() / length, in.h() / height);
    const float wide = length * scale_;
    const float tall = height * scale_;
    const float left = std::round(in.x0 + (in.w() - wide) / 2);
    const float low = std::round(in.y1 - (in.h() - tall) / 2);
    face_ = {left, low - tall, left + wide, low};
  }

  FaceTouch draw(const std::vector<FaceMark>& marks, const FaceFocus& focus) {
    FaceTouch touch;
    if (canvas_.target("face", room_, stage_.say(Word::review)) && canvas_.tap()) {
      touch = touched(canvas_.tap()->at, marks);
    }
    canvas_.fill(face_, canvas_.theme().void_fill);
    for (const FacePatch& patch : view_.patches) {
      draw_look(canvas_, box_of(patch.x, patch.z, patch.w, patch.h), patch.look);
    }
    lines();
    labels();
    this->marks(marks);
    pointed(focus);
    return touch;
  }

 private:
  [[nodiscard]] float x(double metres_along) const {
    const float along = static_cast<float>(metres_along) * scale_;
    return view_.side == Side::far_side ? face_.x1 - along : face_.x0 + along;
  }
  [[nodiscard]] float y(double metres_up) const {
    return face_.y1 - static_cast<float>(metres_up) * scale_;
  }
  [[nodiscard]] Box box_of(double left, double low, double w, double h) const {
    const float a = x(left);
    const float b = x(left + w);
    return {std::min(a, b), y(low + h), std::max(a, b), y(low)};
  }
  [[nodiscard]] Box box_of(const Patch& p) const {
    return box_of(in_metres(p.x), in_metres(p.z), in_metres(p.w), in_metres(p.h)).meet(face_);
  }

  void lines() {
    const Theme& theme = canvas_.theme();
    for (std::size_t bay = 0; bay < view_.tops.size(); ++bay) {
      const float at = y(in_metres(view_.tops[bay]));
      canvas_.line({x(in_metres(view_.bay_edges[bay])), at},
                   {x(in_metres(view_.bay_edges[bay + 1])), at}, theme.ink, canvas_.mm(0.6));
    }
    for (const Length& edge : view_.bay_edges) {
      canvas_.dashes({x(in_metres(edge)), face_.y0}, {x(in_metres(edge)), face_.y1}, theme.line,
                     canvas_.mm(0.25), canvas_.mm(1));
    }
    for (const Length& joint : view_.lifts) {
      canvas_.line({face_.x0, y(in_metres(joint))}, {face_.x1, y(in_metres(joint))}, theme.line,
                   canvas_.mm(0.25));
    }
    for (const Patch& opening : view_.openings) {
      const Box box = box_of(opening);
      canvas_.fill(box, theme.void_fill);
      canvas_.edge(box, theme.line, canvas_.mm(0.3));
      canvas_.line({box.x0, box.y0}, {box.x1, box.y1}, theme.line, canvas_.mm(0.3));
    }
    for (const FaceRow& row : view_.rows) {
      if (!row.running) continue;
      const float half = canvas_.mm(1);
      const float at = y(in_metres(row.z));
      const float a = x(in_metres(row.left));
      const float b = x(in_metres(row.right));
      const Box band{std::min(a, b), at - half, std::max(a, b), at + half};
      canvas_.fill(band, theme.live.ground);
      canvas_.edge(band, theme.live.ink, canvas_.mm(0.3));
    }
    canvas_.edge(face_, theme.form, canvas_.mm(0.8));
  }

  void labels() {
    const Pair pair = canvas_.on_panel();
    const float tall = canvas_.height(Face::small);
    for (const FaceLabel& label : view_.labels) {
      const Box box = box_of(label.x, label.z, label.w, label.h).meet(face_);
      if (box.h() < tall + canvas_.mm(0.8)) continue;
      const std::string text = words(label);
      const float wide = canvas_.width(text, Face::small) + canvas_.mm(1.4);
      if (wide > box.w() - canvas_.mm(0.6)) continue;
      const Point middle = box.middle();
      const Box on{std::round(middle.x - wide / 2), std::round(middle.y - tall / 2),
                   std::round(middle.x + wide / 2), std::round(middle.y + tall / 2)};
      canvas_.fill(on, pair.ground, canvas_.mm(0.6));
      canvas_.text(
          text, on,
          {.face = Face::small, .colours = pair, .across = Across::middle, .free_text = true});
    }
  }

  [[nodiscard]] std::string words(const FaceLabel& label) const {
    if (const auto* ticket = std::get_if<std::string>(&label.tells)) return *ticket;
    if (const auto* age = std::get_if<Seconds>(&label.tells)) return span_text(*age);
    return stage_.say.pressure(std::get<Pressure>(label.tells));
  }

  // Where a mark stands: at the upper left of its place.
  [[nodiscard]] Point mark_at(const FaceMark& mark) const {
    const Box box = box_of(*mark.box);
    const float half = canvas_.mm(kMarkMm / 2);
    const Box in = face_.inset(std::min(half, face_.w() / 2), std::min(half, face_.h() / 2));
    const Point at = mark.blemish ? box.middle() : Point{box.x0 + half, box.y0 + half};
    return {std::clamp(at.x, in.x0, in.x1), std::clamp(at.y, in.y0, in.y1)};
  }

  void marks(const std::vector<FaceMark>& all) {
    drawn_.clear();
    const float half = canvas_.mm(kMarkMm / 2);
    for (const FaceMark& mark : all) {
      if (!mark.box) continue;
      const Point at = mark_at(mark);
      const Box box{at.x - half, at.y - half, at.x + half, at.y + half};
      const bool covers = std::any_of(drawn_.begin(), drawn_.end(),
                                      [&](const Box& other) { return box.overlaps(other); });
      if (covers) continue;  // the table has it
      drawn_.push_back(box);
      const Pair pair = mark.blemish ? canvas_.theme().mend : canvas_.theme().act;
      canvas_.fill(box, pair.ground, mark.blemish ? 0 : half);
      canvas_.edge(box, pair.ink, canvas_.mm(0.35), mark.blemish ? 0 : half);
      canvas_.text(
          std::to_string(mark.number), box,
          {.face = Face::small, .colours = pair, .across = Across::middle, .free_text = true});
    }
  }

  void pointed(const FaceFocus& focus) {
    const Colour ink = canvas_.theme().ink;
    const Colour light = canvas_.theme().panel;
    if (focus.place) {
      const Box box = box_of(*focus.place);
      canvas_.edge(box.inset(-canvas_.mm(0.8)), light, canvas_.mm(0.8));
      canvas_.edge(box.inset(-canvas_.mm(1.6)), ink, canvas_.mm(0.8));
    }
    if (focus.spot) {
      const Point at{x(in_metres(focus.spot->x)), y(in_metres(focus.spot->z))};
      const float arm = canvas_.mm(4);
      for (const bool under : {true, false}) {
        const Colour colour = under ? light : ink;
        const float thick = canvas_.mm(under ? 1.6 : 0.7);
        canvas_.line({at.x - arm, at.y}, {at.x + arm, at.y}, colour, thick);
        canvas_.line({at.x, at.y - arm}, {at.x, at.y + arm}, colour, thick);
      }
    }
  }

  // The nearest mark under the finger, else the spot.
  [[nodiscard]] FaceTouch touched(Point at, const std::vector<FaceMark>& all) const {
    FaceTouch touch;
    float nearest = canvas_.mm(kNearMm);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (!all[i].box) continue;
      const Point mark = mark_at(all[i]);
      const float far = std::hypot(mark.x - at.x, mark.y - at.y);
      if (far >= nearest) continue;
      nearest = far;
      touch.mark = i;
    }
    if (touch.mark) return touch;
    const float from = view_.side == Side::far_side ? face_.x1 - at.x : at.x - face_.x0;
    const double along = std::clamp(from / scale_, 0.0F, face_.w() / scale_);
    const double up = std::clamp((face_.y1 - at.y) / scale_, 0.0F, face_.h() / scale_);
    touch.spot = Spot{metres(along), metres(up)};
    return touch;
  }

  Stage& stage_;
  Canvas& canvas_;
  const FaceMap& view_;
  Box room_, face_;
  float scale_ = 1;
  std::vector<Box> drawn_;
};

std::string figure_of(FaceKind kind, double figure) {
  return kind == FaceKind::dose ? fmt::format("{:g} s", figure)
                                : fmt::format("{:g} %", figure * 100);
}

std::string key_words(const Say& say, FaceKind kind, const FaceKey& key) {
  switch (key.says) {
    case FaceKey::Says::none:
      return say(Word::face_none);
    case FaceKey::Says::unknown:
      return say(kind == FaceKind::head ? Word::face_unrated : Word::face_unknown);
    case FaceKey::Says::open:
      return say(Word::face_open);
    case FaceKey::Says::between:
      break;
  }
  if (!key.from) return say(Word::face_under, figure_of(kind, *key.to));
  if (!key.to) return say(Word::face_over, figure_of(kind, *key.from));
  return say(Word::face_between,
             fmt::format("{:g}", *key.from * (kind == FaceKind::dose ? 1 : 100)),
             figure_of(kind, *key.to));
}

Word title_of(FaceKind kind) {
  switch (kind) {
    case FaceKind::dose:
      return Word::face_of_dose;
    case FaceKind::cover:
      return Word::face_of_cover;
    case FaceKind::head:
      return Word::face_of_head;
    case FaceKind::load:
      break;
  }
  return Word::face_of_load;
}

}  // namespace

FaceTouch draw_face(Stage& stage, const Box& box, const FaceMap& view,
                    const std::vector<FaceMark>& marks, const FaceFocus& focus) {
  return FaceDrawing{stage, box, view}.draw(marks, focus);
}

float face_keys_height(const Canvas& canvas) {
  return 3 * (canvas.height(Face::small) + canvas.mm(0.4));
}

void draw_face_keys(Stage& stage, const Box& box, FaceKind kind, const std::vector<FaceKey>& keys) {
  Canvas& canvas = stage.canvas;
  Box in = box;
  const float line = canvas.height(Face::small);
  canvas.text(stage.say(title_of(kind)), in.cut_top(line, canvas.mm(0.4)),
              {.face = Face::small, .colours = canvas.on_panel()});
  constexpr int kAbreast = 3;
  int i = 0;
  for (const FaceKey& key : keys) {
    Box cell =
        in.line(i / kAbreast, 2, canvas.mm(0.4)).column(i % kAbreast, kAbreast, canvas.mm(1));
    ++i;
    const Box swatch = cell.cut_left(canvas.mm(4.2), canvas.mm(0.7));
    draw_look(canvas, swatch.inset(0, canvas.mm(0.2)), key.look);
    canvas.edge(swatch.inset(0, canvas.mm(0.2)), canvas.theme().line, canvas.mm(0.2));
    canvas.text(key_words(stage.say, kind, key), cell,
                {.face = Face::small, .colours = canvas.on_panel()});
  }
}

}  // namespace rb::screens
