#include "screens/live/bay_start.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

std::vector<int> still_to_start(const PourView& view) {
  std::vector<int> bays;
  if (!view.lift.placing) return bays;
  for (std::size_t bay = 0; bay < view.elevation.bays.size(); ++bay) {
    if (view.elevation.bays[bay].may_start) bays.push_back(static_cast<int>(bay) + 1);
  }
  return bays;
}

event::BayStart start_of(const PourView& view, int bay) {
  return {view.element_id, *view.lift.placing, bay};
}

// Two bays' targets keep the gap of any two.
Box felt_of(Canvas& canvas, const BayColumn& column) {
  return column.box.inset(std::ceil(canvas.gap() / 2), 0);
}

// A label that stands on the bay's concrete, as wide as its column lets it.
void stand_on(Stage& stage, const BayColumn& column, Symbol symbol,
              std::initializer_list<std::string> texts, Look look) {
  Canvas& canvas = stage.canvas;
  const float tall = canvas.height(Face::small);
  const float frame = tall * 0.8F + 3 * canvas.mm(0.9);  // the symbol and what is left free
  for (const std::string& text : texts) {
    const float wide = canvas.width(text, Face::small) + frame;
    if (wide > column.box.w() - canvas.mm(0.6)) continue;
    const float mid = column.box.middle().x;
    const float foot = std::max(column.top - canvas.mm(0.6), column.box.y0 + tall);
    tag(canvas, {mid - wide / 2, foot - tall, mid + wide / 2 + 1, foot}, symbol, text, look);
    return;
  }
}

}  // namespace

void offer_bay_starts(Stage& stage, const Box& face, const std::vector<BayColumn>& columns,
                      const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const auto bays = still_to_start(view);
  for (std::size_t bay = 0; bay < columns.size(); ++bay) {
    const auto& started = view.elevation.bays[bay].started;
    if (!started) continue;
    const std::string at = say.clock_short(*started);
    stand_on(stage, columns[bay], Symbol::check, {at, std::to_string(bay + 1)}, Look::well);
  }
  if (bays.empty()) return;
  const float target = canvas.scale().target();
  const bool wide = std::all_of(bays.begin(), bays.end(), [&](int bay) {
    return felt_of(canvas, columns[static_cast<std::size_t>(bay) - 1]).w() >= target;
  });
  for (const int bay : bays) {
    const BayColumn& column = columns[static_cast<std::size_t>(bay) - 1];
    const std::string text = say(Word::bay_start, bay);
    stand_on(stage, column, Symbol::down, {text, say(Word::bay_start_short, bay)}, Look::act);
    if (!wide) continue;
    const std::string id = "bay-start " + std::to_string(bay);
    const Box felt = felt_of(canvas, column);
    if (canvas.pressed(id)) canvas.edge(felt, canvas.theme().ink, canvas.mm(1.2));
    if (canvas.target(id, felt, text, true, false)) stage.keep(start_of(view, bay));
  }
  if (wide) return;
  const std::string id = "bay-start";
  if (canvas.pressed(id)) canvas.edge(face, canvas.theme().ink, canvas.mm(1.2));
  // Of a form drawn low the room above it belongs to it.
  Box felt = face;
  felt.y0 = std::min(felt.y0, felt.y1 - target);
  if (canvas.target(id, felt, say(Word::bay_start_tap), true, false)) {
    stage.open(BayStartDraft{.at = stage.tapped()});
  }
}

void draw_bay_starts(Stage& stage, const Box& box, BayStartDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  constexpr int kAbreast = 3;
  Box in = panel_with_title(stage, box, stage.say(Word::bay_start_title));
  const auto bays = still_to_start(view);
  const std::size_t lines = (bays.size() + kAbreast - 1) / kAbreast;
  const Pages pages = turn_pages(stage, in, lines, draft.page, "bay-start");
  Box room = pages.room;
  for (std::size_t line = 0; line < pages.lines && pages.first + line < lines; ++line) {
    const Box row = room.cut_top(canvas.scale().target(), canvas.gap());
    for (int i = 0; i < kAbreast; ++i) {
      const std::size_t at = (pages.first + line) * kAbreast + static_cast<std::size_t>(i);
      if (at >= bays.size()) break;
      if (!button(canvas, row.column(i, kAbreast, canvas.gap()),
                  {.id = "bay-start " + std::to_string(bays[at]),
                   .text = stage.say(Word::pad_bay, bays[at]),
                   .look = Look::act,
                   .symbol = Symbol::down})) {
        continue;
      }
      stage.keep(start_of(view, bays[at]), draft.at);
      stage.close();
    }
  }
}

}  // namespace rb::screens
