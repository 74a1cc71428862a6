#include "screens/text_panel.h"

#include <algorithm>

#include "screens/keyboard.h"

namespace rb::screens {

namespace {
constexpr double kEdgeMm = 2.0;
constexpr std::size_t kMostBytes = 200;
}  // namespace

TextEnd draw_text_entry(Stage& stage, const Box& box, const std::string& title, std::string& text) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  for (const std::string& letter : stage.typed) {
    if (letter == "\b") {
      erase_letter(text);
    } else if (text.size() + letter.size() <= kMostBytes) {
      text += letter;
    }
  }
  panel(canvas, box);
  canvas.edge(box, canvas.theme().act.ground, canvas.mm(0.6), canvas.mm(1.6));
  Box in = box.inset(canvas.mm(kEdgeMm));
  Box head = in.cut_top(canvas.scale().target(), gap);
  const float wide = std::max(canvas.scale().target(), canvas.mm(25));
  const Box keep = head.cut_right(wide, gap);
  const Box back = head.cut_right(wide, gap);
  const Pair ground = canvas.theme().quiet;
  canvas.fill(head, ground.ground, canvas.mm(1.6));
  canvas.edge(head, canvas.theme().ink, canvas.mm(0.4), canvas.mm(1.6));
  const Colour ink = text.empty() ? canvas.theme().ink_soft : ground.ink;
  canvas.text(text.empty() ? title : text + "_", head.inset(canvas.mm(1.6), 0),
              {.colours = {ground.ground, ink}, .lines = 2, .free_text = true});
  TextEnd end = TextEnd::open;
  if (button(canvas, back, {.id = "back", .text = say(Word::cancel), .face = Face::small})) {
    end = TextEnd::cancelled;
  }
  if (button(canvas, keep,
             {.id = "keep",
              .text = say(Word::keep),
              .look = Look::act,
              .face = Face::strong,
              .enabled = text.find_first_not_of(' ') != std::string::npos})) {
    end = TextEnd::kept;
  }
  draw_keyboard(stage, in, text);
  return end;
}

}  // namespace rb::screens
