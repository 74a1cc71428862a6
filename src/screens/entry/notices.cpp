#include "screens/entry/notices.h"

#include <algorithm>

namespace rb::screens {

namespace {

Word why_of(PressEnd end) {
  switch (end) {
    case PressEnd::palm:
      return Word::why_palm;
    case PressEnd::wipe:
      return Word::why_wipe;
    case PressEnd::slid:
      return Word::why_slid;
    case PressEnd::echo:
      return Word::why_echo;
    case PressEnd::off:
      return Word::why_off;
    case PressEnd::second:
      return Word::why_second;
    default:
      return Word::why_gone;
  }
}

bool stands(const std::optional<Moment>& until, Moment now) {
  // A clock set back does not keep a notice for ever.
  return until && now < *until && between(now, *until) <= Notices::kLoud;
}

}  // namespace

bool Notices::ended(const Press& press, Moment now) {
  const bool told = press.end != PressEnd::taken && press.end != PressEnd::nothing &&
                    press.end != PressEnd::locked;
  if (!told) return false;
  const bool loud = press.end == PressEnd::gone;
  const bool standing = stands(press_until_, now);
  // A quiet word never takes the place of a loud one that has not been read yet.
  if (standing && end_ == PressEnd::gone && !loud) return false;
  count_ = standing && end_ == press.end ? count_ + 1 : 1;
  end_ = press.end;
  press_until_ = after(now, loud ? kLoud : kQuiet);
  return loud;
}

void Notices::stood(const Stall& stall, Moment now) {
  stall_ = stall;
  stall_until_ = after(now, kLoud);
}

std::optional<Seconds> Notices::draw(Stage& stage, float top) const {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  std::optional<Seconds> ends;
  float y = top;
  const auto strip = [&](const std::string& text, Pair pair, Symbol symbol, Moment until) {
    const float tall = canvas.height(Face::strong) + canvas.mm(2);
    const Box box{0, y, static_cast<float>(canvas.scale().width_px()), y + tall};
    canvas.fill(box, pair.ground);
    Box in = box.inset(canvas.mm(4), canvas.mm(0.5));
    const Box sign = in.cut_left(in.h(), canvas.mm(2));
    canvas.symbol(symbol, sign, pair.ink);
    canvas.text(text, in, {.face = Face::strong, .colours = pair});
    y += tall;
    const Seconds left = between(stage.now, until);
    ends = ends ? std::min(*ends, left) : left;
  };
  if (stands(press_until_, stage.now)) {
    const std::string why = say(why_of(end_));
    const bool loud = end_ == PressEnd::gone;
    strip(count_ > 1 ? say(Word::not_taken_many, count_, why) : say(Word::not_taken, why),
          loud ? canvas.theme().stop : canvas.theme().mend,
          loud ? Symbol::stop_sign : Symbol::note_sign, *press_until_);
  }
  if (stall_ && stands(stall_until_, stage.now)) {
    strip(say(stall_->times_kept ? Word::stood_kept : Word::stood_unsure,
              fmt::format("{:.1f}", stall_->span.count())),
          canvas.theme().mend, Symbol::clock, stall_until_);
  }
  return ends;
}

}  // namespace rb::screens
