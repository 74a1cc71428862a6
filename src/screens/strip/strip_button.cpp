#include "screens/strip/strip_button.h"

namespace rb::screens {

void offer_strip(Stage& stage, const Box& box, const StripView& strip, const ElementId& element,
                 std::optional<Side>& asked) {
  const Say& say = stage.say;
  const bool again = asked == strip.side;
  if (!button(stage.canvas, box,
              {.id = std::string{"strip "} + to_text(strip.side),
               .text = say(Word::after_stripped) + (again ? "?" : ""),
               .under = say(strip.side == Side::near_side ? Word::near_side : Word::far_side),
               .look = again ? Look::stop : Look::quiet,
               .symbol = strip.gates.empty() ? Symbol::down : Symbol::stop_sign,
               .enabled = strip.verdict.has_value()})) {
    return;
  }
  if (!strip.gates.empty()) {
    stage.open(GateDraft{.strip = strip.side, .element = element});
  } else if (again) {
    stage.keep(event::Strip{element, strip.side});
    stage.close();
  } else {
    asked = strip.side;
  }
}

}  // namespace rb::screens
