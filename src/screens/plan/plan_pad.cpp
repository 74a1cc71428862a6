#include "screens/plan/plan_pad.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"
#include "screens/plan/plan_fields.h"

namespace rb::screens {

void draw_plan_pad(Stage& stage, const Box& box, PlanEdit& edit) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const FieldRef ref = *edit.field;
  Box in = panel_with_title(stage, box, field_label(say, edit.draft, ref));
  in.y1 = std::min(in.y1, in.y0 + canvas.mm(110));
  const Box keys = in.cut_left(std::round(in.w() * 0.46F), gap);
  // Only lengths are typed with a foot mark; every other figure has a point.
  Say plain = say;
  if (!is_length(ref)) plain.units = Units::si;
  Stage with_point{canvas,        plain,     stage.settings, stage.drafts,
                   stage.intents, stage.now, stage.next,     stage.typed};
  draw_keys(with_point, keys, edit.typed);

  const Box last = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(19)), gap);
  if (may_clear(ref)) {
    if (button(canvas, in.cut_bottom(canvas.scale().target(), gap),
               {.id = "clear", .text = say(Word::plan_clear), .symbol = Symbol::cross})) {
      clear_field(edit.draft, ref);
      edit.field.reset();
      return;
    }
  }
  const Box says = in.cut_bottom(canvas.height(Face::small) * 2, canvas.mm(1));
  in.y0 = std::max(in.y0, in.y1 - canvas.mm(40));
  const Pair ground = canvas.theme().quiet;
  canvas.fill(in, ground.ground, canvas.mm(1.6));
  canvas.edge(in, ground.ink, canvas.mm(0.5), canvas.mm(1.6));
  const std::string text = edit.typed.empty() ? field_text(say, edit.draft, ref)
                                              : typed_text(ref, edit.typed, say.units);
  canvas.text(text, in.inset(canvas.mm(2)),
              {.face = Face::huge, .colours = ground, .across = Across::middle});
  const bool good = is_figure(ref, edit.typed, say.units);
  if (!good) {
    canvas.text(say(Word::plan_pad_empty), says,
                {.face = Face::small, .colours = canvas.on_panel(), .lines = 2});
  }
  const PanelEnd end = keep_or_cancel(stage, last, good);
  if (end == PanelEnd::kept) put_field(edit.draft, ref, edit.typed, say.units);
  if (end != PanelEnd::open) edit.field.reset();
}

}  // namespace rb::screens
