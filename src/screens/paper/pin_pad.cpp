#include "screens/paper/pin_pad.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

// Their ids tell the log of presses to leave out which one it was (tablet/press_log).
void draw_pin_keys(Stage& stage, const Box& keys, Secret& pin) {
  if (const auto key = key_tapped(stage, keys, "123456789 0<", "pin")) pin.press(*key);
  for (const std::string& letter : stage.typed) pin.press(letter == "\b" ? '<' : letter.front());
}

}  // namespace

PanelEnd draw_pin_pad(Stage& stage, const Box& box, Secret& pin, const PinBeside& beside) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, beside.title);
  draw_pin_keys(stage, in.cut_left(std::round(in.w() * 0.5F), gap), pin);
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const Box line = in.cut_top(canvas.mm(14), gap);
  canvas.fill(line, canvas.theme().quiet.ground, canvas.mm(1.6));
  canvas.edge(line, canvas.theme().ink, canvas.mm(0.5), canvas.mm(1.6));
  std::string dots;
  for (std::size_t i = 0; i < std::min<std::size_t>(pin.size(), 12); ++i) dots += "* ";
  canvas.text(pin.empty() ? stage.say(Word::sign_type) : dots, line.inset(canvas.mm(1)),
              {.face = pin.empty() ? Face::small : Face::title,
               .colours = canvas.theme().quiet,
               .across = Across::middle});
  if (!beside.doubt.empty()) {
    tag(canvas, in.cut_top(3 * canvas.height(Face::small), canvas.mm(1)), Symbol::mend_sign,
        beside.doubt, Look::mend, Face::small, true);
  }
  canvas.text(beside.says, in,
              {.face = Face::small,
               .colours = canvas.on_panel(),
               .down = Down::top,
               .lines = 8,
               .free_text = true});
  PanelEnd end = PanelEnd::open;
  if (button(canvas, foot.column(0, 2, gap),
             {.id = "back", .text = stage.say(Word::cancel), .symbol = Symbol::back})) {
    end = PanelEnd::cancelled;
  }
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "pin keep",
              .text = stage.say(beside.keep),
              .look = Look::act,
              .symbol = Symbol::check,
              .enabled = pin.size() >= beside.least})) {
    end = PanelEnd::kept;
  }
  return end;
}

}  // namespace rb::screens
