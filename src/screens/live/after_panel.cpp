#include "screens/live/after_panel.h"

#include <algorithm>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"
#include "screens/strip/strip_button.h"

namespace rb::screens {

void draw_after(Stage& stage, const Box& box, AfterDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  if (draft.figure) {
    const PanelEnd end = draw_figure_pad(stage, box, *draft.figure, say(Word::after_temp));
    if (end == PanelEnd::kept) {
      const Celsius temp = temperature_of(*entered(*draft.figure, say.units), say.units);
      stage.keep(event::ConcreteTemp{view.element_id, temp, {}, {}}, draft.at);
      stage.close();
    }
    if (end == PanelEnd::cancelled) draft.figure.reset();
    return;
  }
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::after_title, view.element_id.text));
  back_button(stage, in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap));
  constexpr int kLines = 4;
  in.y1 = std::min(in.y1, in.y0 + kLines * canvas.mm(22));
  int i = 0;
  const auto cell = [&](const ButtonSpec& spec) {
    const Box place = in.line(i / 2, kLines, gap).column(i % 2, 2, gap);
    ++i;
    return button(canvas, place, spec);
  };
  if (view.curing) {
    if (cell({.id = "cure end",
              .text = say(Word::after_cure_end),
              .under = say(Word::after_since, say.clock_short(*view.curing)),
              .look = Look::live,
              .symbol = Symbol::check})) {
      stage.keep(event::CureEnd{view.element_id, {}});
      stage.close();
    }
  } else if (cell({.id = "cure start", .text = say(Word::after_cure_start), .look = Look::act})) {
    stage.keep(event::CureStart{view.element_id, {}});
    stage.close();
  }
  if (cell({.id = "hardening", .text = say(Word::after_temp), .symbol = Symbol::level})) {
    draft.figure = FigureEntry{.what = Figure::hardening};
    draft.at = stage.tapped();
  }
  if (cell({.id = "permit strip",
            .text = say(Word::after_permit),
            .symbol = Symbol::pencil,
            .enabled = view.lift.latest.has_value()})) {
    stage.open(TypeDraft{.use = TypeDraft::Use::permit,
                         .permit = event::PermitStrip{view.element_id, {}, {}},
                         .at = stage.tapped()});
  }
  if (cell({.id = "specimens", .text = say(Word::after_specimen), .symbol = Symbol::list})) {
    stage.open(SpecimensDraft{});
  }
  // What strips stands on a line of its own.
  for (const StripView& strip : view.strips) {
    const Box place = in.line(i / 2, kLines, gap).column(i % 2, 2, gap);
    ++i;
    offer_strip(stage, place, strip, view.element_id, draft.strip);
  }
  for (const Side side : {Side::near_side, Side::far_side}) {
    if (cell({.id = std::string{"face "} + to_text(side),
              .text = say(Word::face_blemishes),
              .under = say(side == Side::near_side ? Word::near_side : Word::far_side),
              .symbol = Symbol::pencil})) {
      stage.open(StripDraft{.side = side});
    }
  }
}

}  // namespace rb::screens
