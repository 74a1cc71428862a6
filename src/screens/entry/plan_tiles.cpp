#include "screens/entry/plan_tiles.h"

#include <algorithm>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {
constexpr double kTallestTileMm = 19.0;
}

int draw_tiles(Stage& stage, const Box& box, const std::vector<Tile>& tiles, int columns,
               int& turn) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box room = box;
  const auto across = static_cast<std::size_t>(columns);
  std::size_t lines = std::max<std::size_t>(1, lines_in(canvas, room.h()));
  const std::size_t wanted = (tiles.size() + across - 1) / across;
  if (wanted > lines) {
    const Box foot = room.cut_bottom(canvas.scale().target(), gap);
    lines = std::max<std::size_t>(1, lines_in(canvas, room.h()));
    const int pages = static_cast<int>((wanted + lines - 1) / lines);
    turn = std::clamp(turn, 0, pages - 1);
    if (button(canvas, foot.column(0, 3, gap),
               {.id = "tiles up", .text = {}, .symbol = Symbol::up, .enabled = turn > 0})) {
      --turn;
    }
    if (button(canvas, foot.column(2, 3, gap),
               {.id = "tiles down",
                .text = {},
                .symbol = Symbol::down,
                .enabled = turn + 1 < pages})) {
      ++turn;
    }
    canvas.text(say(Word::page_of, turn + 1, pages), foot.column(1, 3, gap),
                {.face = Face::strong, .colours = canvas.on_page(), .across = Across::middle});
  } else {
    turn = 0;
    lines = std::max<std::size_t>(1, wanted);
  }
  const float tall =
      std::min(canvas.mm(kTallestTileMm), (room.h() + gap) / static_cast<float>(lines) - gap);
  room.y1 = room.y0 + static_cast<float>(lines) * (tall + gap) - gap;
  const std::size_t first = static_cast<std::size_t>(turn) * lines * across;
  int tapped = -1;
  for (std::size_t i = 0; i < lines * across && first + i < tiles.size(); ++i) {
    const Tile& tile = tiles[first + i];
    const Box place = room.line(static_cast<int>(i / across), static_cast<int>(lines), gap)
                          .column(static_cast<int>(i % across), columns, gap);
    // A guess is marked by a word and a sign, not by a shade.
    const std::string label =
        tile.guessed ? tile.label + " \u00B7 " + say(Word::plan_guess) : tile.label;
    if (button(canvas, place,
               {.id = tile.id,
                .text = tile.value,
                .under = label,
                .look = tile.guessed ? Look::mend : tile.look,
                .symbol = tile.guessed ? Symbol::mend_sign : tile.symbol,
                .free_text = tile.free_text})) {
      tapped = static_cast<int>(first + i);
    }
  }
  return tapped;
}

}  // namespace rb::screens
