#include "screens/review/side_pages.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

SidePages side_pages(Stage& stage, const Box& box, std::size_t count, int& page,
                     const std::string& id, float tall, float gap) {
  Canvas& canvas = stage.canvas;
  SidePages out{box, 0, 0};
  out.room.x1 = std::floor(box.x1);  // parts are whole pixels: their gaps stay as wide as they are
  out.lines = std::max<std::size_t>(1, static_cast<std::size_t>((box.h() + gap) / (tall + gap)));
  const int pages = std::max(1, static_cast<int>((count + out.lines - 1) / out.lines));
  page = std::clamp(page, 0, pages - 1);
  out.first = static_cast<std::size_t>(page) * out.lines;
  if (pages == 1) return out;
  const float target = canvas.scale().target();
  const float apart = canvas.gap();
  const bool stacked = box.h() >= 2 * target + apart;
  Box turn = out.room.cut_right(stacked ? target : 2 * target + apart, apart);
  turn.y1 = turn.y0 + (stacked ? 2 * target + apart : target);
  const Box earlier = stacked ? turn.line(0, 2, apart) : turn.column(0, 2, apart);
  const Box later = stacked ? turn.line(1, 2, apart) : turn.column(1, 2, apart);
  if (button(canvas, earlier, {.id = id + " page-up", .symbol = Symbol::up, .enabled = page > 0})) {
    --page;
  }
  if (button(canvas, later,
             {.id = id + " page-down", .symbol = Symbol::down, .enabled = page + 1 < pages})) {
    ++page;
  }
  return out;
}

}  // namespace rb::screens
