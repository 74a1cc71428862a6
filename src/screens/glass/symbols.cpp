// The symbols, drawn in a square of 24 units.
#include <imgui.h>

#include <array>
#include <cmath>
#include <initializer_list>

#include "screens/glass/canvas.h"

namespace rb::screens {

namespace {

class Pen {
 public:
  Pen(Canvas& canvas, const Box& box, Colour colour) : canvas_(canvas), colour_(colour) {
    const float side = std::min(box.w(), box.h());
    unit_ = side / 24;
    origin_ = {box.middle().x - side / 2, box.middle().y - side / 2};
  }
  [[nodiscard]] Point at(float x, float y) const {
    return {origin_.x + x * unit_, origin_.y + y * unit_};
  }
  void stroke(std::initializer_list<Point> path, float thickness = 3) {
    const Point* before = nullptr;
    for (const Point& p : path) {
      if (before != nullptr) {
        canvas_.line(at(before->x, before->y), at(p.x, p.y), colour_, thickness * unit_);
      }
      canvas_.dot(at(p.x, p.y), thickness * unit_ / 2, colour_);
      before = &p;
    }
  }
  void block(float x0, float y0, float x1, float y1) {
    const Point a = at(x0, y0);
    const Point b = at(x1, y1);
    canvas_.fill({a.x, a.y, b.x, b.y}, colour_, unit_);
  }
  void wedge(Point a, Point b, Point c) {
    canvas_.triangle(at(a.x, a.y), at(b.x, b.y), at(c.x, c.y), colour_);
  }
  void ring(float x, float y, float radius, float thickness = 3) {
    constexpr int kSides = 28;
    for (int i = 0; i < kSides; ++i) {
      const auto turn = [&](int k) {
        const float angle = 6.2831853F * static_cast<float>(k) / kSides;
        return Point{x + radius * std::cos(angle), y + radius * std::sin(angle)};
      };
      stroke({turn(i), turn(i + 1)}, thickness);
    }
  }
  void spot(float x, float y, float radius) { canvas_.dot(at(x, y), radius * unit_, colour_); }
  void spot(float x, float y, float radius, Colour colour) {
    canvas_.dot(at(x, y), radius * unit_, colour);
  }

 private:
  Canvas& canvas_;
  Colour colour_;
  float unit_ = 1;
  Point origin_;
};

void sun(Pen& pen) {
  pen.spot(12, 12, 4.5F);
  for (int i = 0; i < 8; ++i) {
    const float angle = 0.78539816F * static_cast<float>(i);
    const float c = std::cos(angle);
    const float s = std::sin(angle);
    pen.stroke({{12 + 7.5F * c, 12 + 7.5F * s}, {12 + 10 * c, 12 + 10 * s}}, 2.2F);
  }
}

// Each knows some of the symbols and passes over the others.
void work(Pen& pen, Symbol symbol) {
  switch (symbol) {
    case Symbol::run:
      pen.wedge({6, 3}, {6, 21}, {21, 12});
      break;
    case Symbol::rest:
      pen.block(5, 5, 19, 19);
      break;
    case Symbol::rise:
      pen.stroke({{12, 16}, {12, 3.5F}});
      pen.stroke({{6, 9}, {12, 3}, {18, 9}});
      pen.stroke({{4, 21}, {20, 21}});
      break;
    case Symbol::level:
      pen.stroke({{3, 12}, {21, 12}});
      pen.wedge({7, 2}, {17, 2}, {12, 9});
      pen.stroke({{7, 17}, {17, 17}}, 2);
      pen.stroke({{10, 21}, {14, 21}}, 2);
      break;
    case Symbol::check:
      pen.stroke({{4, 13}, {10, 19}, {20, 6}}, 3.4F);
      break;
    case Symbol::cross:
      pen.stroke({{5, 5}, {19, 19}}, 3.4F);
      pen.stroke({{19, 5}, {5, 19}}, 3.4F);
      break;
    case Symbol::pencil:
      pen.stroke({{6, 18}, {17, 7}}, 4.4F);
      pen.wedge({3, 21}, {4.2F, 15.8F}, {8.2F, 19.8F});
      pen.stroke({{13, 21}, {21, 21}}, 2);
      break;
    case Symbol::back:
      pen.stroke({{15, 4}, {7, 12}, {15, 20}}, 3.4F);
      break;
    case Symbol::forward:
      pen.stroke({{9, 4}, {17, 12}, {9, 20}}, 3.4F);
      break;
    default:
      break;
  }
}

void arrow_or_page(Pen& pen, Symbol symbol) {
  switch (symbol) {
    case Symbol::up:
      pen.stroke({{4, 15}, {12, 7}, {20, 15}}, 3.4F);
      break;
    case Symbol::down:
      pen.stroke({{4, 9}, {12, 17}, {20, 9}}, 3.4F);
      break;
    case Symbol::more:
      pen.spot(4.5F, 12, 2.6F);
      pen.spot(12, 12, 2.6F);
      pen.spot(19.5F, 12, 2.6F);
      break;
    case Symbol::hold:
      pen.block(5, 4, 10, 20);
      pen.block(14, 4, 19, 20);
      break;
    case Symbol::note:
      pen.stroke({{4, 4}, {20, 4}, {20, 16}, {12, 16}, {7, 21}, {7, 16}, {4, 16}, {4, 4}}, 2.4F);
      pen.stroke({{8, 9}, {16, 9}}, 2);
      pen.stroke({{8, 12}, {13, 12}}, 2);
      break;
    default:
      break;
  }
}

void sign_or_key(Pen& pen, Symbol symbol) {
  switch (symbol) {
    case Symbol::stop_sign:  // an octagon ring with a bar: reads as stop without its colour
      pen.stroke({{8, 2}, {16, 2}, {22, 8}, {22, 16}, {16, 22}, {8, 22}, {2, 16}, {2, 8}, {8, 2}},
                 2.4F);
      pen.stroke({{7, 12}, {17, 12}}, 4);
      break;
    case Symbol::mend_sign:  // a triangle ring with a mark
      pen.stroke({{12, 3}, {22, 21}, {2, 21}, {12, 3}}, 2.4F);
      pen.stroke({{12, 9}, {12, 14}}, 2.8F);
      pen.spot(12, 18, 1.6F);
      break;
    case Symbol::note_sign:
      pen.ring(12, 12, 9.5F, 2.4F);
      pen.stroke({{12, 11}, {12, 17}}, 2.8F);
      pen.spot(12, 7, 1.7F);
      break;
    case Symbol::erase:
      pen.stroke({{9, 5}, {22, 5}, {22, 19}, {9, 19}, {2, 12}, {9, 5}}, 2.4F);
      pen.stroke({{11, 9}, {17, 15}}, 2.4F);
      pen.stroke({{17, 9}, {11, 15}}, 2.4F);
      break;
    case Symbol::clock:
      pen.ring(12, 12, 9.5F, 2.4F);
      pen.stroke({{12, 6}, {12, 12}, {16, 15}}, 2.4F);
      break;
    case Symbol::cable:  // a chain of two links: hung and tethered
      pen.ring(8, 9, 5.5F, 2.4F);
      pen.ring(16, 15, 5.5F, 2.4F);
      break;
    case Symbol::plus:
      pen.stroke({{12, 4}, {12, 20}}, 3.4F);
      pen.stroke({{4, 12}, {20, 12}}, 3.4F);
      break;
    case Symbol::minus:
      pen.stroke({{4, 12}, {20, 12}}, 3.4F);
      break;
    case Symbol::sun:
      sun(pen);
      break;
    case Symbol::moon:
      pen.stroke({{15, 3}, {10, 5}, {7, 9}, {7, 14}, {10, 19}, {15, 21}, {20, 19}}, 2.4F);
      pen.stroke({{15, 3}, {13, 8}, {14, 13}, {17, 17}, {20, 19}}, 2.4F);
      break;
    case Symbol::list:
      for (const float y : {5.0F, 12.0F, 19.0F}) {
        pen.spot(4, y, 1.8F);
        pen.stroke({{9, y}, {21, y}}, 2.6F);
      }
      break;
    default:
      break;
  }
}

}  // namespace

void Canvas::symbol(Symbol symbol, const Box& box, Colour colour) {
  Pen pen(*this, box, colour);
  work(pen, symbol);
  arrow_or_page(pen, symbol);
  sign_or_key(pen, symbol);
}

}  // namespace rb::screens
