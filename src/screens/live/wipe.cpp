#include "screens/live/wipe.h"

#include <algorithm>
#include <cmath>

#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

constexpr double kCornerWideMm = 34;
constexpr double kCornerTallMm = 24;

}  // namespace

void Wipe::begin(Seconds steady) {
  on_ = true;
  began_ = steady;
  touched_ = steady;
  down_.reset();
  first_.reset();
}

Box Wipe::corner(int which, const Scale& scale) {
  const float wide = scale.mm(kCornerWideMm);
  const float tall = scale.mm(kCornerTallMm);
  const float gap = scale.gap();
  const auto right = static_cast<float>(scale.width_px());
  const auto foot = static_cast<float>(scale.height_px());
  if (which == 1) return {gap, foot - gap - tall, gap + wide, foot - gap};
  return {right - gap - wide, scale.mm(20), right - gap, scale.mm(20) + tall};
}

bool Wipe::held_still(const Touch& up, int which, const Scale& scale) const {
  const Box box = corner(which, scale);
  const auto still = static_cast<float>(kStillMm * scale.px_per_mm());
  return box.holds(down_->at) && box.holds(up.at) && up.wandered <= still &&
         std::hypot(up.at.x - down_->at.x, up.at.y - down_->at.y) <= still &&
         up.steady - down_->steady >= kHold;
}

std::optional<Press> Wipe::feed(const Touch& touch, const Scale& scale) {
  touched_ = std::max(touched_, touch.steady);
  if (touch.kind == Touch::Kind::second) first_.reset();
  if (touch.kind == Touch::Kind::down) down_ = touch;
  if (touch.kind != Touch::Kind::up || !down_) return {};
  if (first_ && down_->steady - *first_ <= kBetween && held_still(touch, 2, scale)) {
    on_ = false;
  } else if (held_still(touch, 1, scale)) {
    first_ = touch.steady;
  } else {
    first_.reset();
  }
  const Press press{{}, *down_, touch, PressEnd::locked};
  down_.reset();
  return press;
}

void Wipe::tick(Seconds steady) {
  if (on_ && !down_ && left(steady) <= Seconds{0} && steady - touched_ >= kAlone) on_ = false;
}

Seconds Wipe::left(Seconds steady) const {
  return std::max({Seconds{0}, kLocked - (steady - began_), kAlone - (steady - touched_)});
}

void Wipe::draw_corner(Stage& stage, int which, Seconds steady) const {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Box box = corner(which, canvas.scale());
  const bool turn = which == 1 || (first_ && steady - *first_ <= kBetween + kHold);
  const bool held = down_ && box.holds(down_->at);
  const Seconds left = held ? kHold - (steady - down_->steady) : kHold;
  const std::string under = !turn                   ? say(Word::wipe_first)
                            : left <= Seconds{0.05} ? say(Word::wipe_lift)
                                                    : say(Word::wipe_hold, std::ceil(left.count()));
  button(canvas, box,
         {.id = which == 1 ? "wipe 1" : "wipe 2",
          .text = std::to_string(which),
          .under = under,
          .look = held && turn ? Look::act : Look::quiet,
          .face = Face::title});
}

void Wipe::draw(Stage& stage, const PourView* view, Seconds steady) const {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box in = Box{0, 0, static_cast<float>(canvas.scale().width_px()),
               static_cast<float>(canvas.scale().height_px())}
               .inset(canvas.mm(8), canvas.mm(20));
  in.y0 += canvas.mm(26);
  const TextStyle middle{
      .face = Face::strong, .colours = canvas.on_page(), .across = Across::middle, .lines = 2};
  TextStyle title = middle;
  title.face = Face::title;
  const Box head{canvas.mm(8), canvas.mm(20), corner(2, canvas.scale()).x0 - canvas.mm(4),
                 canvas.mm(44)};
  canvas.text(say(Word::wipe_title), head, title);
  canvas.text(say(Word::wipe_how, kHold.count(), kHold.count()),
              in.cut_top(2 * canvas.height(Face::strong), canvas.mm(2)), middle);
  canvas.text(say(Word::wipe_ends, std::ceil(left(steady).count())),
              in.cut_top(2 * canvas.height(Face::strong), canvas.mm(3)), middle);
  if (view != nullptr) {
    in.y1 = corner(1, canvas.scale()).y0 - canvas.mm(2);
    for (const RowView& row : view->rows) {
      if (!row.running_since || in.h() < canvas.height(Face::title)) continue;
      TextStyle timers = title;
      timers.lines = 1;
      timers.free_text = true;
      canvas.text(row_name(say, row.place, view->two_sides) + " " + say(Word::running) + " " +
                      timer(row.ran),
                  in.cut_top(canvas.height(Face::title), canvas.mm(1)), timers);
    }
  }
  draw_corner(stage, 1, steady);
  draw_corner(stage, 2, steady);
}

}  // namespace rb::screens
