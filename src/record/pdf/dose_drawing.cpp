#include "record/pdf/dose_drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/measure.h"

namespace rb {

namespace {

constexpr double kLeft = 62;   // labels of the lifts
constexpr double kRight = 56;  // labels of the rows
constexpr double kTop = 6;
constexpr double kBelow = 28;  // bays and their scale
constexpr double kLegend = 26;
constexpr double kLabel = 9.2;  // least distance of two labels
constexpr double kThin = 64;    // a strip lower than this is hard to read: cut a long wall up

enum class Pattern { plain, crosses, lattice, hatch, bars, dots };

struct Face {
  Colour fill;
  Pattern pattern;
  double gap;
  Colour pen;
};

// From none to far over, ever darker, each with a pattern of its own: readable without colour.
constexpr std::array<Face, kDoseClasses> kFaces{{
    {look::white, Pattern::crosses, 8, look::clay},
    {{0.985, 0.980, 0.975}, Pattern::lattice, 9, look::clay},
    {{0.890, 0.900, 0.905}, Pattern::hatch, 7, look::clay},
    {{0.735, 0.785, 0.822}, Pattern::plain, 0, look::slate},
    {{0.520, 0.595, 0.652}, Pattern::bars, 7, {0.40, 0.48, 0.54}},
    {{0.250, 0.322, 0.384}, Pattern::dots, 7, look::white},
}};

struct Box {
  double x, y, w, h;
};

void slanted(cairo_t* cr, const Box& b, double gap, int direction) {
  const double start = direction > 0 ? b.x - b.h : b.x;
  const double stop = direction > 0 ? b.x + b.w : b.x + b.w + b.h;
  for (double at = std::floor(start / gap) * gap; at <= stop; at += gap) {
    cairo_move_to(cr, at, b.y + b.h);
    cairo_line_to(cr, at + direction * b.h, b.y);
  }
}

// The pattern over a box; what it may cover was clipped before.
void put_pattern(const Ink& ink, const Face& face, const Box& b) {
  cairo_t* cr = ink.cr();
  ink.colour(face.pen);
  cairo_set_line_width(cr, 0.5);
  const double gap = face.gap;
  switch (face.pattern) {
    case Pattern::plain:
      return;
    case Pattern::crosses:
      for (double y = b.y + gap / 2; y < b.y + b.h + gap; y += gap) {
        for (double x = b.x + gap / 2; x < b.x + b.w + gap; x += gap) {
          cairo_move_to(cr, x - 1.6, y - 1.6);
          cairo_line_to(cr, x + 1.6, y + 1.6);
          cairo_move_to(cr, x - 1.6, y + 1.6);
          cairo_line_to(cr, x + 1.6, y - 1.6);
        }
      }
      break;
    case Pattern::lattice:
      slanted(cr, b, gap, 1);
      slanted(cr, b, gap, -1);
      break;
    case Pattern::hatch:
      slanted(cr, b, gap, 1);
      break;
    case Pattern::bars:  // upright: the lines of lifts and rows lie flat
      for (double x = b.x + gap; x < b.x + b.w; x += gap) {
        cairo_move_to(cr, x, b.y);
        cairo_line_to(cr, x, b.y + b.h);
      }
      break;
    case Pattern::dots:
      for (double y = b.y + gap / 2; y < b.y + b.h + gap; y += gap) {
        for (double x = b.x + gap / 2; x < b.x + b.w + gap; x += gap) {
          cairo_new_sub_path(cr);
          cairo_arc(cr, x, y, 0.9, 0, 2 * M_PI);
        }
      }
      cairo_fill(cr);
      return;
  }
  cairo_stroke(cr);
}

struct Frame {
  int strips = 1;
  double scale = 1;  // points a metre
};

Frame frame_for(const DoseMap& map, double width, double most) {
  const double length = std::max(in_metres(map.length), 0.01);
  const double height = std::max(in_metres(map.height), 0.01);
  const double room = width - kLeft - kRight;
  const double tall = most - kLegend;
  Frame frame;
  for (int strips = 1; strips <= 5; ++strips) {
    const double scale = std::min(room * strips / length, (tall / strips - kTop - kBelow) / height);
    if (strips > 1 && scale <= frame.scale) break;
    frame = {strips, scale};
    if (scale * height >= kThin) break;
  }
  return frame;
}

// Part of the elevation, from one x to another, in its box.
class Strip {
 public:
  Strip(const Ink& ink, const DoseMap& map, const Voice& voice, const Box& box, double from,
        double to, double scale)
      : ink_(ink), map_(map), voice_(voice), box_(box), from_(from), to_(to), scale_(scale) {}

  void draw() const {
    cairo_t* cr = ink_.cr();
    cairo_save(cr);
    cairo_rectangle(cr, box_.x, box_.y, box_.w, box_.h);
    cairo_clip(cr);
    fill();
    openings();
    bays();
    lifts();
    rows();
    blemishes();
    cairo_restore(cr);
    ink_.frame(box_.x, box_.y, box_.w, box_.h, look::slate, 1.1);
    lift_labels();
    row_labels();
    scale_below();
  }

 private:
  [[nodiscard]] double px(double x) const { return box_.x + (x - from_) * scale_; }
  [[nodiscard]] double pz(double z) const { return box_.y + box_.h - z * scale_; }
  [[nodiscard]] double px(Length x) const { return px(in_metres(x)); }
  [[nodiscard]] double pz(Length z) const { return pz(in_metres(z)); }

  void fill() const {
    cairo_t* cr = ink_.cr();
    const auto bands = dose_bands(map_);
    for (std::size_t i = 0; i < kDoseClasses; ++i) {
      if (bands[i].empty()) continue;
      cairo_save(cr);
      cairo_new_path(cr);
      for (const DoseBand& b : bands[i]) {
        cairo_rectangle(cr, px(b.x), pz(b.z + b.h), b.w * scale_, b.h * scale_);
      }
      cairo_clip(cr);
      ink_.box(box_.x, box_.y, box_.w, box_.h, kFaces[i].fill);
      put_pattern(ink_, kFaces[i], box_);
      cairo_restore(cr);
    }
  }

  void openings() const {
    for (const Patch& o : map_.openings) {
      const Box b{px(o.x), pz(o.z + o.h), in_metres(o.w) * scale_, in_metres(o.h) * scale_};
      ink_.box(b.x, b.y, b.w, b.h, look::white);
      ink_.line(b.x, b.y, b.x + b.w, b.y + b.h, look::steel);
      ink_.line(b.x, b.y + b.h, b.x + b.w, b.y, look::steel);
      ink_.frame(b.x, b.y, b.w, b.h, look::slate, 1.0);
      if (b.w < 44 || b.h < 14) continue;
      ink_.box(b.x + b.w / 2 - 20, b.y + b.h / 2 - 6, 40, 12, look::white);
      ink_.text(b.x + b.w / 2, b.y + b.h / 2 - 5.5, told(voice_.language, said("opening")),
                {7.5, false, look::slate, Align::centre});
    }
  }

  void bays() const {
    static constexpr std::array<double, 2> kDash{2, 3};
    cairo_set_dash(ink_.cr(), kDash.data(), 2, 0);
    for (const Length& edge : map_.bay_edges) {
      ink_.line(px(edge), box_.y, px(edge), box_.y + box_.h, look::slate, 0.7);
    }
    cairo_set_dash(ink_.cr(), nullptr, 0, 0);
  }

  // Bay by bay, so that a stepped top shows as it stood.
  void lifts() const {
    for (const DoseMapLift& lift : map_.lifts) {
      for (std::size_t bay = 0; bay + 1 < map_.bay_edges.size() && bay < lift.tops.size(); ++bay) {
        const double y = pz(lift.tops[bay]);
        ink_.line(px(map_.bay_edges[bay]), y, px(map_.bay_edges[bay + 1]), y, look::white, 2.2);
        ink_.line(px(map_.bay_edges[bay]), y, px(map_.bay_edges[bay + 1]), y, look::slate, 1.1);
      }
    }
  }

  void rows() const {
    cairo_t* cr = ink_.cr();
    static constexpr std::array<double, 2> kDash{6, 2.5};
    for (const DoseMapRow& row : map_.rows) {
      const double y = pz(row.z);
      ink_.line(box_.x, y, box_.x + box_.w, y, look::white, 1.8);
      cairo_set_dash(cr, kDash.data(), 2, 0);
      ink_.line(box_.x, y, box_.x + box_.w, y, look::slate, 0.7);
      cairo_set_dash(cr, nullptr, 0, 0);
      for (const Length& x : row.motors) {
        cairo_new_sub_path(cr);
        cairo_arc(cr, px(x), y, 3.2, 0, 2 * M_PI);
        ink_.colour(look::white);
        cairo_fill_preserve(cr);
        ink_.colour(look::slate);
        cairo_set_line_width(cr, 1.3);
        cairo_stroke(cr);
      }
    }
  }

  // Where the stripped face showed something: a frame and its number in the list.
  void blemishes() const {
    for (const DoseMapBlemish& b : map_.blemishes) {
      const double x = px(b.patch.x);
      const double y = pz(b.patch.z + b.patch.h);
      const double w = std::max(in_metres(b.patch.w) * scale_, 4.0);
      const double h = std::max(in_metres(b.patch.h) * scale_, 4.0);
      ink_.frame(x, y, w, h, look::white, 3.6);
      ink_.frame(x, y, w, h, look::slate, 1.8);
      const std::string number = std::to_string(b.number);
      const double wide = 7.0 + 4.5 * static_cast<double>(number.size());
      const double tag = std::clamp(x + w + 2, box_.x, box_.x + box_.w - wide);
      const double up = std::clamp(y + h / 2 - 5.5, box_.y, box_.y + box_.h - 11);
      ink_.box(tag - 0.8, up - 0.8, wide + 1.6, 12.6, look::white);
      ink_.box(tag, up, wide, 11, look::slate);
      ink_.text(tag + wide / 2, up + 0.3, number, {7.5, true, look::white, Align::centre});
    }
  }

  struct Label {
    double at;
    std::string text;
  };

  // Labels that would touch are moved apart; a thin line leads from the place to its label.
  void labels(std::vector<Label> all, double edge, double reach, Align align) const {
    std::sort(all.begin(), all.end(), [](const Label& a, const Label& b) { return a.at > b.at; });
    double free = box_.y + box_.h + kLabel / 2;
    const double step = std::min(
        kLabel, (box_.h + kLabel) / static_cast<double>(std::max<std::size_t>(all.size(), 1)));
    for (std::size_t i = 0; i < all.size(); ++i) {
      const double rest = static_cast<double>(all.size() - 1 - i);
      double y = std::min(all[i].at, free - step * (i == 0 ? 0 : 1));
      y = std::max(y, box_.y - kLabel / 2 + rest * step);
      free = y;
      ink_.line(edge, all[i].at, edge + reach * 0.6, y, look::steel, 0.5);
      ink_.text(edge + reach * 0.8, y - 5, all[i].text, {7, false, look::slate, align});
    }
  }

  void lift_labels() const {
    std::vector<Label> all;
    for (const DoseMapLift& lift : map_.lifts) {
      if (lift.tops.empty()) continue;
      const Length top = *std::max_element(lift.tops.begin(), lift.tops.end());
      all.push_back(
          {pz(lift.tops.front()),
           say(said("lift {lift}"), {{"lift", std::to_string(lift.lift)}}) + "  " + height(top)});
    }
    labels(std::move(all), box_.x, -9, Align::right);
  }

  void row_labels() const {
    std::vector<Label> all;
    for (const DoseMapRow& row : map_.rows) {
      all.push_back({pz(row.z), fmt::format("{}  {}", row.row, height(row.z))});
    }
    labels(std::move(all), box_.x + box_.w, 9, Align::left);
  }

  void scale_below() const {
    const double y = box_.y + box_.h;
    double taken = -1e9;
    for (const Length& edge : map_.bay_edges) {
      const double m = in_metres(edge);
      if (m < from_ - 1e-6 || m > to_ + 1e-6) continue;
      ink_.line(px(edge), y, px(edge), y + 3, look::slate, 0.7);
      if (px(edge) - taken < 26) continue;
      taken = px(edge);
      ink_.text(px(edge), y + 3.5, height(edge), {7, false, look::steel, Align::centre});
    }
    for (std::size_t bay = 0; bay + 1 < map_.bay_edges.size(); ++bay) {
      const double from = std::max(in_metres(map_.bay_edges[bay]), from_);
      const double to = std::min(in_metres(map_.bay_edges[bay + 1]), to_);
      if ((to - from) * scale_ < 26) continue;
      ink_.text(px((from + to) / 2), y + 12.5,
                say(said("bay {bay}"), {{"bay", std::to_string(bay + 1)}}),
                {7, true, look::steel, Align::centre});
    }
  }

  [[nodiscard]] std::string height(Length z) const {
    return shown_text(in_metres(z), Measure::length, voice_.units) + " " +
           unit_text(Measure::length, voice_.units);
  }
  [[nodiscard]] std::string say(Said english, Facts facts) const {
    return words_of(Saying{english, std::move(facts)}, voice_);
  }

  const Ink& ink_;
  const DoseMap& map_;
  const Voice& voice_;
  Box box_;
  double from_, to_, scale_;
};

void draw_legend(const Ink& ink, const DoseMap& map, Language language, double x, double y,
                 double width) {
  if (map.patches.empty()) {
    ink.text(x, y + 4, told(language, said("No dose to show: nothing was reckoned for this side.")),
             {7.5, false, look::steel});
    return;
  }
  const auto words = dose_legend(map, language);
  const double step = (width - 52) / static_cast<double>(kDoseClasses);
  ink.text(x, y + 4, told(language, said("Vibrated for")), {7.5, true, look::steel});
  for (std::size_t i = 0; i < kDoseClasses; ++i) {
    const Box b{x + 56 + step * static_cast<double>(i), y + 2, 20, 13};
    cairo_save(ink.cr());
    cairo_rectangle(ink.cr(), b.x, b.y, b.w, b.h);
    cairo_clip(ink.cr());
    ink.box(b.x, b.y, b.w, b.h, kFaces[i].fill);
    put_pattern(ink, kFaces[i], b);
    cairo_restore(ink.cr());
    ink.frame(b.x, b.y, b.w, b.h, look::slate, 0.7);
    ink.text(b.x + 24, y + 4, words[i], {7.2, i < 3, look::slate});
  }
}

}  // namespace

double dose_drawing_height(const DoseMap& map, double width, double most) {
  const Frame frame = frame_for(map, width, most);
  return frame.strips * (in_metres(map.height) * frame.scale + kTop + kBelow) + kLegend;
}

void draw_dose_map(const Ink& ink, const DoseMap& map, const Voice& voice, double x, double y,
                   double width, double most) {
  const Frame frame = frame_for(map, width, most);
  const double length = in_metres(map.length) / frame.strips;
  const double h = in_metres(map.height) * frame.scale;
  const double w = length * frame.scale;
  const double left = x + kLeft + (width - kLeft - kRight - w) / 2;
  for (int i = 0; i < frame.strips; ++i) {
    const Box box{left, y + kTop, w, h};
    Strip{ink, map, voice, box, length * i, length * (i + 1), frame.scale}.draw();
    y += h + kTop + kBelow;
  }
  draw_legend(ink, map, voice.language, x, y, width);
}

}  // namespace rb
