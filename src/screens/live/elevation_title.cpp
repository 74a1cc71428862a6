#include "screens/live/elevation_title.h"

namespace rb::screens {

namespace {

std::string full_words(const Say& say, const PourView& view) {
  return say(Word::full_about, *view.lift.placing, say.clock_short(view.full->likely));
}

}  // namespace

void draw_elevation_title(Stage& stage, Box& in, const PourView& view) {
  Canvas& canvas = stage.canvas;
  if (view.elements.size() > 1) {
    const Box title = in.cut_top(canvas.scale().target(), canvas.mm(1));
    const auto& now = view.elements[view.element];
    int elsewhere = 0;  // rows that run where they are not seen
    for (const ElementChoice& other : view.elements) {
      if (other.id != now.id) elsewhere += other.rows_running;
    }
    const std::string under =
        fmt::format("{} / {}", view.element + 1, view.elements.size()) +
        (elsewhere > 0 ? " \u00B7 " + stage.say(Word::running_elsewhere, elsewhere)
         : view.full   ? " \u00B7 " + full_words(stage.say, view)
                       : "");
    if (button(canvas, title,
               {.id = "element",
                .text = now.id.text,
                .under = under,
                .look = elsewhere > 0 ? Look::live : Look::quiet,
                .symbol = Symbol::list,
                .free_text = true})) {
      stage.open(ElementsDraft{});
    }
  } else {
    Box title = in.cut_top(canvas.height(Face::body), canvas.mm(0.4));
    const std::string text = view.elements.empty() ? view.name
                             : view.name.empty()   ? view.element_id.text
                                                   : view.element_id.text + " \u00B7 " + view.name;
    if (view.full) {
      const std::string full = full_words(stage.say, view);
      const Box at =
          title.cut_right(canvas.width(full, Face::strong) + canvas.mm(0.5), canvas.mm(2));
      canvas.text(full, at, {.face = Face::strong, .colours = canvas.on_panel()});
    }
    canvas.text(text, title, {.face = Face::body, .colours = canvas.soft(), .free_text = true});
  }
}

}  // namespace rb::screens
