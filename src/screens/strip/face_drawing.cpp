#include "screens/strip/face_drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {

// A blemish by its number, whatever its colour: hatched in ink, with an edge.
void draw_blemish(Canvas& canvas, const FaceFrame& frame, const BlemishView& blemish) {
  const Theme& theme = canvas.theme();
  const Box box = frame.box_of(blemish.what.patch);
  const bool done = blemish.mended == Mended::accepted;
  canvas.fill(box, theme.panel);
  if (!done) canvas.hatch(box, theme.ink, canvas.mm(1.6), false);
  const auto& outline = blemish.what.outline;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto& a = outline[i];
    const auto& b = outline[(i + 1) % outline.size()];
    canvas.line(frame.point_of(a.x, a.z), frame.point_of(b.x, b.z), theme.mark, canvas.mm(0.7));
  }
  canvas.edge(box, theme.ink, canvas.mm(outline.empty() ? 0.6 : 0.25));
}

void number_blemish(Canvas& canvas, const FaceFrame& frame, const BlemishView& blemish) {
  const std::string text = std::to_string(blemish.number);
  const Point mid = frame.box_of(blemish.what.patch).middle();
  const float wide = canvas.width(text, Face::small) + canvas.mm(2);
  const float tall = canvas.height(Face::small);
  const Box& all = frame.box();
  const float x =
      std::clamp(mid.x, all.x0 + wide / 2, std::max(all.x0 + wide / 2, all.x1 - wide / 2));
  const float y =
      std::clamp(mid.y, all.y0 + tall / 2, std::max(all.y0 + tall / 2, all.y1 - tall / 2));
  const Box label{x - wide / 2, std::round(y - tall / 2), x + wide / 2, std::round(y + tall / 2)};
  canvas.fill(label, canvas.theme().panel, canvas.mm(0.8));
  canvas.edge(label, canvas.theme().ink, canvas.mm(0.3), canvas.mm(0.8));
  canvas.text(text, label,
              {.face = Face::small, .colours = canvas.on_panel(), .across = Across::middle});
}

void draw_bays(Canvas& canvas, const FaceFrame& frame, const FaceView& face) {
  const Theme& theme = canvas.theme();
  const Box& all = frame.box();
  for (std::size_t i = 0; i < face.bays.size(); ++i) {
    const BayFace& bay = face.bays[i];
    const Patch concrete{bay.x0, {}, bay.x1 - bay.x0, bay.top};
    canvas.fill(frame.box_of(concrete), theme.hard);
    const Box column = frame.box_of({bay.x0, {}, bay.x1 - bay.x0, face.height});
    if (i > 0) {
      const float x = frame.point_of(bay.x0, {}).x;
      canvas.line({x, all.y0}, {x, all.y1}, theme.line, canvas.mm(0.25));
    }
    if (face.bays.size() == 1) continue;
    const std::string number = std::to_string(i + 1);
    const Box under{column.x0, all.y1 + canvas.mm(0.6), column.x1,
                    all.y1 + canvas.mm(0.6) + canvas.height(Face::small)};
    if (canvas.width(number, Face::small) > under.w()) continue;
    canvas.text(number, under,
                {.face = Face::small, .colours = canvas.soft(), .across = Across::middle});
  }
}

}  // namespace

FaceFrame::FaceFrame(const Box& room, const FaceView& face)
    : mirrored_(face.side == Side::far_side) {
  const auto length = static_cast<float>(std::max(in_metres(face.length), 0.1));
  const auto height = static_cast<float>(std::max(in_metres(face.height), 0.1));
  px_per_m_ = std::max(std::min(room.w() / length, room.h() / height), 0.01F);
  const float wide = length * px_per_m_, tall = height * px_per_m_;
  const float left = std::round(room.x0 + (room.w() - wide) / 2);
  const float top = std::round(room.y0 + (room.h() - tall) / 2);
  box_ = {left, top, left + wide, top + tall};
}

Point FaceFrame::point_of(Length x, Length z) const {
  const float along = static_cast<float>(in_metres(x)) * px_per_m_;
  return {mirrored_ ? box_.x1 - along : box_.x0 + along,
          box_.y1 - static_cast<float>(in_metres(z)) * px_per_m_};
}

Box FaceFrame::box_of(const Patch& patch) const {
  const Point a = point_of(patch.x, patch.z);
  const Point b = point_of(patch.x + patch.w, patch.z + patch.h);
  return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

Length FaceFrame::length_of(float px) const {
  return metres(static_cast<double>(px / px_per_m_));
}

Length FaceFrame::x_at(Point at) const {
  const float x = std::clamp(at.x, box_.x0, box_.x1);
  return length_of(mirrored_ ? box_.x1 - x : x - box_.x0);
}

Length FaceFrame::z_at(Point at) const {
  return length_of(box_.y1 - std::clamp(at.y, box_.y0, box_.y1));
}

Patch FaceFrame::patch_between(Point a, Point b) const {
  const Length x0 = std::min(x_at(a), x_at(b)), x1 = std::max(x_at(a), x_at(b));
  const Length z0 = std::min(z_at(a), z_at(b)), z1 = std::max(z_at(a), z_at(b));
  return {x0, z0, x1 - x0, z1 - z0};
}

void draw_face(Stage& stage, const FaceFrame& frame, const FaceView& face,
               const std::optional<Patch>& drawn) {
  Canvas& canvas = stage.canvas;
  const Theme& theme = canvas.theme();
  const Box& all = frame.box();
  canvas.fill(all, theme.void_fill);
  draw_bays(canvas, frame, face);
  for (const Patch& patch : face.openings) {
    const Box box = frame.box_of(patch);
    canvas.fill(box, theme.void_fill);
    canvas.edge(box, theme.form, canvas.mm(0.7));
    canvas.line({box.x0, box.y0}, {box.x1, box.y1}, theme.form, canvas.mm(0.3));
  }
  for (const Length& lift : face.lifts) {
    const float y = frame.point_of({}, lift).y;
    canvas.dashes({all.x0, y}, {all.x1, y}, theme.line, canvas.mm(0.25), canvas.mm(1.2));
  }
  for (const BlemishView& blemish : face.blemishes) draw_blemish(canvas, frame, blemish);
  for (const BlemishView& blemish : face.blemishes) number_blemish(canvas, frame, blemish);
  if (drawn) {
    const Box box = frame.box_of(*drawn);
    canvas.edge(box, theme.stop.ground, canvas.mm(1.2));
    canvas.edge(box, theme.ink, canvas.mm(0.4));
  }
  canvas.edge(all, theme.ink, canvas.mm(0.4));
}

}  // namespace rb::screens
