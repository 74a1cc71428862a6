#include "screens/live/pour_layout.h"

#include "screens/entry/keyboard.h"

#include <algorithm>

namespace rb::screens {

namespace {
constexpr double kHeadMm = 15.0;
constexpr double kSideButtonMm = 25.0;
constexpr double kClockMm = 19.0;
constexpr double kLightMm = 31.0;      // three short lines beside a sign
constexpr double kLowerMm = 62.0;      // lift and taps under a lying elevation
constexpr double kLowerTallMm = 58.0;  // the same, where the rows lie under them
constexpr double kPanelMm = 106.0;     // the tallest panels, five lines under a title
constexpr double kTallAspect = 1.1;
}  // namespace

PourLayout lay_out_pour(const Scale& scale, double aspect, HandSide rows_on, bool light) {
  const float gap = scale.gap();
  PourLayout out;
  Box all =
      Box{0, 0, static_cast<float>(scale.width_px()), static_cast<float>(scale.height_px())}.inset(
          gap);
  Box head = all.cut_top(scale.mm(kHeadMm), gap);
  out.back = head.cut_left(scale.mm(kSideButtonMm), gap);
  out.more = head.cut_right(scale.mm(kSideButtonMm), gap);
  out.clock = head.cut_right(scale.mm(kClockMm), gap);
  if (light) out.light = head.cut_right(scale.mm(kLightMm), gap);
  out.attention = head;
  if (scale.portrait()) {
    out.attention = all.cut_top(scale.mm(kHeadMm), gap);
    if (light) out.light = Box{head.x0, out.light.y0, out.light.x1, out.light.y1};
    if (!light) out.clock.x0 = head.x0;
    out.rows = all.cut_bottom(std::max(all.h() * 0.36F, scale.mm(69)), gap);
  } else {
    const float wide = std::max(all.w() * 0.31F, scale.mm(60));
    out.rows = rows_on == HandSide::right ? all.cut_right(wide, gap) : all.cut_left(wide, gap);
  }
  out.work = all;
  // A panel short of height takes the line above it as well, never the rows.
  out.tall = all;
  if (all.h() < scale.mm(kPanelMm)) out.tall.y0 = out.attention.y0;
  out.typing = all;
  const float keys = keyboard_height(scale, all.w());
  if (all.h() < keys) out.typing.y0 = out.attention.y0;
  Box work = all;
  if (aspect < kTallAspect) {
    out.elevation = work.cut_right(work.w() * 0.44F, gap);
    Box column = work;
    out.lift = column.cut_top(std::min(scale.mm(kLowerMm - 10), column.h() * 0.55F), gap);
    out.taps = column;
  } else {
    Box lower = work.cut_bottom(
        std::min(scale.mm(scale.portrait() ? kLowerTallMm : kLowerMm), work.h() * 0.6F), gap);
    out.elevation = work;
    out.lift = lower.cut_left((lower.w() - gap) / 2, gap);
    out.taps = lower;
  }
  return out;
}

}  // namespace rb::screens
