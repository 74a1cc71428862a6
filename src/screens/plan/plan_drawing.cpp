#include "screens/plan/plan_drawing.h"

#include <array>

#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "screens/live/elevation.h"

namespace rb::screens {

void draw_planned(Stage& stage, const Box& box, const PlanDraft& draft, std::size_t element) {
  Canvas& canvas = stage.canvas;
  const Element& drawn = draft.plan.elements[element];
  const bool sized = drawn.length > Length{} && drawn.rise_height() > Length{};
  if (!sized || drawn.bays.empty() || draft.plan.mixes.empty()) {
    panel(canvas, box);
    canvas.text(stage.say(Word::plan_no_size), box.inset(canvas.mm(4)),
                {.colours = canvas.soft(), .across = Across::middle, .lines = 6});
    return;
  }
  // A pour of this element alone, opened and not begun.
  auto plan = std::make_shared<Plan>(draft.plan);
  plan->elements = {drawn};
  Event open;
  open.at = stage.now;
  open.what = event::PourOpen{PourId{"plan"}, plan};
  const auto state = fold(std::array{open});
  if (!state) return;
  const CheckReport none;
  const PourView view = make_pour_view(*state, none, 0, stage.now);
  canvas.clip(box);
  draw_elevation(stage, box, view);
  canvas.unclip();
}

}  // namespace rb::screens
