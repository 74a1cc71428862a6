#include "screens/live/elevation.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "screens/live/bay_start.h"
#include "screens/live/elevation_title.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

class Drawing {
 public:
  Drawing(Stage& stage, const Box& room, const PourView& view)
      : stage_(stage), canvas_(stage.canvas), view_(view), it_(view.elevation) {
    const float label = canvas_.width("0 000.00 m", Face::small);
    Box inner = room;
    inner.cut_left(label, canvas_.mm(1));
    inner.y0 += canvas_.height(Face::small) / 2 + canvas_.mm(0.5);
    inner.y1 -= canvas_.height(Face::small) + canvas_.mm(0.8);
    const auto length = static_cast<float>(std::max(in_metres(it_.length), 0.1));
    const auto height = static_cast<float>(std::max(in_metres(it_.height), 0.1));
    px_per_m_ = std::min(inner.w() / length, inner.h() / height);
    const float wide = length * px_per_m_;
    const float tall = height * px_per_m_;
    const float left = std::round(inner.x0 + (inner.w() - wide) / 2);
    const float bottom = std::round(inner.y1 - (inner.h() - tall) / 2);
    face_ = {left, bottom - tall, left + wide, bottom};
    label_left_ = std::max(room.x0, left - label - canvas_.mm(2));
  }

  void draw() {
    canvas_.fill(face_, theme().void_fill);
    concrete();
    congested();
    openings();
    lifts();
    bays();
    rows();
    starts();
    form();
  }

 private:
  [[nodiscard]] const Theme& theme() const { return canvas_.theme(); }
  [[nodiscard]] float x(Length at) const {
    return face_.x0 + static_cast<float>(in_metres(at)) * px_per_m_;
  }
  [[nodiscard]] float y(Length at) const {
    return face_.y1 - static_cast<float>(in_metres(at)) * px_per_m_;
  }

  // Sand and stones in the concrete, the draughtsman's sign for it; always in the same places.
  void grain(const Box& box) {
    if (box.h() < canvas_.mm(1.5)) return;
    const float pitch = canvas_.mm(3.4);
    std::uint32_t seed = 0;
    for (float gy = face_.y1; gy > box.y0; gy -= pitch) {
      for (float gx = face_.x0; gx < face_.x1; gx += pitch) {
        seed = seed * 1664525U + 1013904223U;
        const float dx = static_cast<float>(seed >> 24U) / 256 * pitch;
        const float dy = static_cast<float>(seed >> 16U & 0xFFU) / 256 * pitch;
        const float size = canvas_.mm(0.22 + 0.3 * static_cast<double>(seed >> 8U & 0xFFU) / 256);
        const Point at{gx + dx, gy - dy};
        const Box in = box.inset(size * 1.6F, size * 1.6F);
        if (at.x < in.x0 || at.x > in.x1 || at.y < in.y0 || at.y > in.y1) continue;
        if ((seed & 3U) == 0) {
          canvas_.triangle({at.x, at.y - size * 1.6F}, {at.x - size * 1.5F, at.y + size},
                           {at.x + size * 1.6F, at.y + size * 0.7F}, theme().grain);
        } else {
          const float half = size * 0.6F;
          canvas_.fill({at.x - half, at.y - half, at.x + half, at.y + half}, theme().grain);
        }
      }
    }
  }

  void ruled(const Box& box) {
    for (float at = box.y1 - canvas_.mm(0.9); at > box.y0 + canvas_.mm(0.5);
         at -= canvas_.mm(1.5)) {
      canvas_.line({box.x0, at}, {box.x1, at}, theme().fresh_line, canvas_.mm(0.3));
    }
  }

  void concrete() {
    for (const BayView& bay : it_.bays) {
      const Box hard{x(bay.x0), y(bay.lift_bottom), x(bay.x1), face_.y1};
      const Box fresh{x(bay.x0), y(bay.standing), x(bay.x1), hard.y0};
      canvas_.fill(hard, theme().hard);
      canvas_.fill(fresh, theme().fresh);
      // Hard concrete has its stones, fresh lies in lines like a liquid: told apart without colour.
      grain(hard);
      ruled(fresh);
      if (bay.standing > metres(0)) {
        canvas_.fill({fresh.x0, fresh.y0 - canvas_.mm(0.3), fresh.x1, fresh.y0 + canvas_.mm(0.3)},
                     theme().ink);
      }
      if (bay.about && *bay.about > bay.standing) {
        const float top = y(*bay.about);
        canvas_.hatch({fresh.x0, top, fresh.x1, fresh.y0}, theme().fresh_line, canvas_.mm(2),
                      false);
        canvas_.dashes({fresh.x0, top}, {fresh.x1, top}, theme().ink, canvas_.mm(0.5),
                       canvas_.mm(1.6));
      }
    }
  }

  void congested() {
    for (const Patch& patch : it_.congested) {
      const Box box{x(patch.x), y(patch.z + patch.h), x(patch.x + patch.w), y(patch.z)};
      canvas_.clip(box);
      // A grid of bars: steel stands close here.
      for (float gx = box.x0; gx < box.x1; gx += canvas_.mm(2.4)) {
        canvas_.line({gx, box.y0}, {gx, box.y1}, theme().grain, canvas_.mm(0.25));
      }
      for (float gy = box.y1; gy > box.y0; gy -= canvas_.mm(2.4)) {
        canvas_.line({box.x0, gy}, {box.x1, gy}, theme().grain, canvas_.mm(0.25));
      }
      canvas_.unclip();
    }
  }

  void openings() {
    for (const Patch& patch : it_.openings) {
      const Box box{x(patch.x), y(patch.z + patch.h), x(patch.x + patch.w), y(patch.z)};
      canvas_.fill(box, theme().void_fill);
      canvas_.edge(box, theme().form, canvas_.mm(0.7));
      canvas_.line({box.x0, box.y0}, {box.x1, box.y1}, theme().form, canvas_.mm(0.3));
      canvas_.line({box.x0, box.y1}, {box.x1, box.y0}, theme().form, canvas_.mm(0.3));
    }
  }

  void lifts() {
    float free_below = face_.y1 + canvas_.height(Face::small);
    for (std::size_t i = 0; i < it_.lifts.size(); ++i) {
      const float at = y(it_.lifts[i]);
      const bool now = it_.lift == i;
      canvas_.dashes({face_.x0, at}, {face_.x1, at}, now ? theme().mark : theme().line,
                     canvas_.mm(now ? 0.6 : 0.25), canvas_.mm(now ? 3 : 1.2));
      const float tall = canvas_.height(Face::small);
      canvas_.line({face_.x0 - canvas_.mm(2), at}, {face_.x0, at},
                   now ? theme().mark : theme().line, canvas_.mm(0.4));
      // Labels keep clear of one another; the lift being placed always has its own.
      if (!now && at + tall / 2 > free_below) continue;
      const Box room{label_left_, std::round(at - tall / 2), face_.x0 - canvas_.mm(2.6),
                     std::round(at + tall / 2)};
      const std::string text =
          fmt::format("{} \u00B7 {}", i + 1, stage_.say.height_bare(it_.lifts[i]));
      if (now) {
        const float wide = canvas_.width(text, Face::small) + canvas_.mm(1.6);
        const Box ground{room.x1 - wide + canvas_.mm(0.8), room.y0, room.x1 + canvas_.mm(0.8),
                         room.y1};
        canvas_.fill(ground, theme().act.ground, canvas_.mm(0.8));
      }
      canvas_.text(text, room,
                   {.face = Face::small,
                    .colours = now ? theme().act : canvas_.soft(),
                    .across = Across::right});
      free_below = room.y0;
    }
  }

  // The bay's number and until when its open joint must be knitted, where that fits.
  std::string bay_words(std::size_t bay, float room) {
    std::string bare = std::to_string(bay + 1);
    for (const KnitView& knit : view_.knit) {
      if (knit.bay != bay) continue;
      const std::string by = stage_.say.clock_short(knit.by);
      std::string words =
          knit.gone ? stage_.say(Word::knit_bay_gone, bare) : fmt::format("{} \u00B7 {}", bare, by);
      if (canvas_.width(words, Face::small) <= room) return words;
    }
    return bare;
  }

  void bays() {
    const float tall = canvas_.height(Face::small);
    const float below = face_.y1 + canvas_.mm(0.8);
    if (it_.bays.size() > 1 && !view_.knit.empty()) {
      // What the times beside the bays' numbers are.
      canvas_.text(stage_.say(Word::knit_bay_by),
                   {label_left_, below, face_.x0 - canvas_.mm(2.6), below + tall},
                   {.face = Face::small, .colours = canvas_.soft(), .across = Across::right});
    }
    for (std::size_t i = 0; i < it_.bays.size(); ++i) {
      const BayView& bay = it_.bays[i];
      if (i > 0) {
        canvas_.line({x(bay.x0), face_.y0}, {x(bay.x0), face_.y1}, theme().line, canvas_.mm(0.25));
      }
      if (it_.bays.size() == 1) continue;
      const Box room{x(bay.x0), face_.y1 + canvas_.mm(0.8), x(bay.x1),
                     face_.y1 + canvas_.mm(0.8) + tall};
      canvas_.text(bay_words(i, room.w()), room,
                   {.face = Face::small, .colours = canvas_.soft(), .across = Across::middle});
    }
  }

  // Whether a row's motors stand on the screen with less than their own width between them.
  [[nodiscard]] bool crowded(const RowView& row) const {
    if (row.spots.size() < 3) return false;
    const float along = x(row.spots.back().x) - x(row.spots.front().x);
    return along < static_cast<float>(row.spots.size() - 1) * canvas_.mm(4);
  }

  // How far apart the nearest two rows of a side stand on the screen.
  [[nodiscard]] float row_pitch() const {
    float pitch = face_.h();
    for (const RowView& a : view_.rows) {
      for (const RowView& b : view_.rows) {
        if (a.place.side == b.place.side && a.z < b.z) pitch = std::min(pitch, y(a.z) - y(b.z));
      }
    }
    return pitch;
  }

  // Seen from far: a band, dark where motors hang, with a tick each 5 mm that says motors where
  // there is room for them. It leaves the concrete between two rows to be seen.
  void far_motors(const RowView& row) {
    const float at = y(row.z);
    const float half = std::max(0.5F, std::min(canvas_.mm(0.6), pitch_ * 0.2F));
    const float end = canvas_.mm(1);
    const Box band{x(row.spots.front().x) - end, at - half, x(row.spots.back().x) + end, at + half};
    canvas_.fill(band, theme().panel);
    for (std::size_t first = 0; first < row.spots.size();) {
      std::size_t next = first;
      while (next < row.spots.size() && row.spots[next].hung == row.spots[first].hung) ++next;
      if (row.spots[first].hung) {
        canvas_.fill(
            {x(row.spots[first].x) - end, band.y0, x(row.spots[next - 1].x) + end, band.y1},
            theme().ink);
      }
      first = next;
    }
    if (half >= canvas_.mm(0.5)) canvas_.edge(band, theme().ink, canvas_.mm(0.3));
    if (pitch_ < canvas_.mm(5)) return;  // ticks of row upon row would hide the concrete
    for (float tick = band.x0 + end; tick < band.x1; tick += canvas_.mm(5)) {
      canvas_.line({tick, at - 2 * half}, {tick, at + 2 * half}, theme().ink, canvas_.mm(0.4));
    }
  }

  void row_line(const RowView& row) {
    const float at = y(row.z);
    const bool running = row.running_since.has_value();
    const bool far = row.place.side == Side::far_side;
    const float motor = canvas_.mm(2.0);
    if (row.spots.empty()) return;
    const float left = x(row.spots.front().x);
    const float right = x(row.spots.back().x);
    if (running) {
      const float half = canvas_.mm(2.1);
      const Box band{x(row.reach_left), at - half, x(row.reach_right), at + half};
      canvas_.fill(band, theme().live.ground);
      canvas_.hatch(band, theme().live.ink, canvas_.mm(2.6), true);
      canvas_.edge(band, theme().live.ink, canvas_.mm(0.5));
    } else if (crowded(row)) {
      return far_motors(row);
    } else if (far) {
      canvas_.dashes({left, at}, {right, at}, theme().ink, canvas_.mm(0.5), canvas_.mm(1));
    } else {
      canvas_.line({left, at}, {right, at}, theme().ink, canvas_.mm(0.5));
    }
    if (crowded(row)) return far_motors(row);
    for (const MotorSpot& spot : row.spots) {
      const float mx = x(spot.x);
      const Box box{mx - motor / 2, at - motor / 2, mx + motor / 2, at + motor / 2};
      if (spot.hung || !row.hung) {
        canvas_.fill(box, theme().panel, canvas_.mm(0.5));
      }
      if (spot.hung) canvas_.fill(box, theme().ink, canvas_.mm(0.5));
      canvas_.edge(box, theme().ink, canvas_.mm(0.4), canvas_.mm(0.5));
    }
  }

  // Where a row's name stands: near rows at the left end, far rows at the right, on the row's line
  // between its two last motors where it hides neither, else just above them.
  Box name_box(const RowView& row, float wide, float tall) {
    const bool far = row.place.side == Side::far_side;
    const float at = y(row.z);
    const std::size_t count = row.spots.size();
    float mid = far ? face_.x1 - canvas_.mm(1) - wide / 2 : face_.x0 + canvas_.mm(1) + wide / 2;
    float low = at - canvas_.mm(1.4);
    if (count > 1) {
      const float a = x(row.spots[far ? count - 2 : 0].x);
      const float b = x(row.spots[far ? count - 1 : 1].x);
      if (b - a >= wide + canvas_.mm(2.6)) {
        mid = (a + b) / 2;
        low = at + tall / 2;
      }
    }
    return {mid - wide / 2, std::round(low - tall), mid + wide / 2, std::round(low)};
  }

  // A running row is named in the middle of it, two sides' beside each other.
  Box running_box(const RowView& row, float wide, float tall) {
    const bool far = row.place.side == Side::far_side;
    const float aside = far ? wide * 0.55F : (view_.two_sides ? -wide * 0.55F : 0);
    const float mid = (face_.x0 + face_.x1) / 2 + aside;
    const float top = std::round(y(row.z) - tall / 2);
    return {mid - wide / 2, top, mid + wide / 2, top + tall};
  }

  // The fullest of a row's names that leaves room for the row's like on the other side.
  std::string name_that_fits(const RowView& row) {
    const float pad = canvas_.mm(2);
    // A name at rest must not hide the motors, nor the concrete.
    const float share = (row.running_since ? 1.0F : 0.5F) / (view_.two_sides ? 2.0F : 1.0F);
    const float room = face_.w() * share - canvas_.mm(2);
    const std::string& id = row.place.row.text;
    const std::string name = row_name(stage_.say, row.place, view_.two_sides);
    std::vector<std::string> names;
    if (row.running_since) {
      const std::string ran = " " + timer(row.ran);
      names = {name + " " + stage_.say(Word::running) + ran, name + ran, id + ran};
    } else if (crowded(row)) {
      names = {fmt::format("{} \u00B7 {}", name, row.spots.size()), name};
    } else {
      names = {name};
    }
    for (const std::string& text : names) {
      if (canvas_.width(text, Face::small) + pad <= room) return text;
    }
    return id;
  }

  void rows() {
    pitch_ = row_pitch();
    for (const RowView& row : view_.rows) row_line(row);
    const float tall = canvas_.height(Face::small);
    std::vector<Box> named;
    for (const RowView& row : view_.rows) {
      if (row.spots.empty()) continue;
      const std::string text = name_that_fits(row);
      const bool running = row.running_since.has_value();
      const Pair pair = running ? theme().live : canvas_.on_panel();
      const float wide = canvas_.width(text, Face::small) + canvas_.mm(2);
      const Box box = running ? running_box(row, wide, tall) : name_box(row, wide, tall);
      // Rows too close to be named each: some are; what runs always is.
      const bool covers = std::any_of(named.begin(), named.end(), [&](const Box& other) {
        return box.x0 < other.x1 && other.x0 < box.x1 && box.y0 < other.y1 && other.y0 < box.y1;
      });
      if (covers && !running && crowded(row)) continue;
      named.push_back(box);
      canvas_.fill(box, pair.ground, canvas_.mm(0.8));
      if (running) canvas_.edge(box, pair.ink, canvas_.mm(0.3), canvas_.mm(0.8));
      canvas_.text(
          text, box,
          {.face = Face::small, .colours = pair, .across = Across::middle, .free_text = true});
    }
  }

  // Where a tap says that concrete reaches a bay.
  void starts() {
    std::vector<BayColumn> columns;
    for (const BayView& bay : it_.bays) {
      columns.push_back({{x(bay.x0), face_.y0, x(bay.x1), face_.y1}, y(bay.standing)});
    }
    offer_bay_starts(stage_, face_, columns, view_);
  }

  void form() {
    const float t = canvas_.mm(1.1);
    canvas_.fill({face_.x0 - t, face_.y0, face_.x0, face_.y1 + t}, theme().form);
    canvas_.fill({face_.x1, face_.y0, face_.x1 + t, face_.y1 + t}, theme().form);
    canvas_.fill({face_.x0, face_.y1, face_.x1, face_.y1 + t * 0.6F}, theme().form);
  }

  Stage& stage_;
  Canvas& canvas_;
  const PourView& view_;
  const ElevationView& it_;
  Box face_;
  float px_per_m_ = 1;
  float pitch_ = 0;
  float label_left_ = 0;
};

}  // namespace

void draw_elevation(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  panel(canvas, box);
  Box in = box.inset(canvas.mm(2), canvas.mm(1.2));
  draw_elevation_title(stage, in, view);
  if (view.elements.empty()) return;
  Drawing(stage, in, view).draw();
}

}  // namespace rb::screens
