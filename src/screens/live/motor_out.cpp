#include "screens/live/motor_out.h"

#include <algorithm>

#include "screens/entry/paging.h"
#include "screens/entry/plan_tiles.h"
#include "screens/view/event_words.h"

namespace rb::screens {

void draw_motor_out(Stage& stage, const Box& box, MotorOutDraft& draft, const PourView& view) {
  const Say& say = stage.say;
  Box in = panel_with_back(stage, box,
                           say(Word::motor_out_title, row_name(say, draft.place, view.two_sides)));
  const auto row = std::find_if(view.rows.begin(), view.rows.end(),
                                [&](const RowView& known) { return known.place == draft.place; });
  if (row == view.rows.end()) return;
  std::vector<Tile> tiles;
  tiles.reserve(row->spots.size());
  for (const MotorSpot& spot : row->spots) {
    tiles.push_back({.id = "out " + spot.motor.text,
                     .value = spot.motor.text,
                     .label = say(spot.hung ? Word::correct_hung : Word::correct_not_hung),
                     .free_text = true,
                     .symbol = spot.hung ? Symbol::check : Symbol::cross,
                     .look = spot.hung ? Look::act : Look::off});
  }
  const int tapped = draw_tiles(stage, in, tiles, 4, draft.turn);
  if (tapped < 0) return;
  const MotorSpot& spot = row->spots[static_cast<std::size_t>(tapped)];
  if (!spot.hung) return;  // it shakes nothing already
  constexpr event::Chosen kWhy = event::Chosen::vibrator_or_power;
  stage.keep(event::MotorOut{spot.motor, draft.place.element, event::says(kWhy), kWhy});
  stage.close();
}

}  // namespace rb::screens
