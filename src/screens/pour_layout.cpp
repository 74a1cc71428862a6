#include "screens/pour_layout.h"

#include <algorithm>

namespace rb::screens {

namespace {
constexpr double kHeadMm = 15.0;
constexpr double kSideButtonMm = 25.0;
constexpr double kClockMm = 19.0;
constexpr double kLowerMm = 58.0;    // lift and taps under a lying elevation
constexpr double kTypingMm = 111.0;  // a line of text and five of keys
constexpr double kTallAspect = 1.1;
}  // namespace

PourLayout lay_out_pour(const Scale& scale, double aspect, bool two_sides, HandSide rows_on) {
  const float gap = scale.gap();
  PourLayout out;
  Box all =
      Box{0, 0, static_cast<float>(scale.width_px()), static_cast<float>(scale.height_px())}.inset(
          gap);
  Box head = all.cut_top(scale.mm(kHeadMm), gap);
  out.back = head.cut_left(scale.mm(kSideButtonMm), gap);
  out.more = head.cut_right(scale.mm(kSideButtonMm), gap);
  out.clock = head.cut_right(scale.mm(kClockMm), gap);
  out.attention = head;
  out.row_columns = two_sides ? 2 : 1;
  if (scale.portrait()) {
    out.attention = all.cut_top(scale.mm(kHeadMm), gap);
    out.clock.x0 = head.x0;
    out.rows = all.cut_bottom(std::max(all.h() * 0.36F, scale.mm(69)), gap);
  } else {
    const float share = two_sides ? 0.42F : 0.31F;
    const float wide = std::max(all.w() * share, scale.mm(two_sides ? 84 : 60));
    out.rows = rows_on == HandSide::right ? all.cut_right(wide, gap) : all.cut_left(wide, gap);
  }
  out.work = all;
  out.typing = all;
  if (all.h() < scale.mm(kTypingMm)) out.typing.y0 = out.attention.y0;
  Box work = all;
  if (aspect < kTallAspect && !two_sides) {
    out.elevation = work.cut_right(work.w() * 0.44F, gap);
    Box column = work;
    out.lift = column.cut_top(std::min(scale.mm(kLowerMm - 6), column.h() * 0.55F), gap);
    out.taps = column;
  } else {
    Box lower = work.cut_bottom(std::min(scale.mm(kLowerMm), work.h() * 0.6F), gap);
    out.elevation = work;
    out.lift = lower.cut_left((lower.w() - gap) / 2, gap);
    out.taps = lower;
  }
  return out;
}

}  // namespace rb::screens
