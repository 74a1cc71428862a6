#include "screens/book/clock_question.h"

#include "screens/entry/paging.h"

namespace rb::screens {

ClockQuestion doubt_of_clock(Moment now, Moment made, std::optional<Moment> last_entry) {
  if (now < made) return {ClockDoubt::before_build, made};
  if (between(made, now) > kClockFarAhead) return {ClockDoubt::far_ahead, made};
  if (!last_entry) return {};
  if (between(now, *last_entry) > kClockBehindBook) return {ClockDoubt::behind_book, *last_entry};
  if (between(*last_entry, now) > kClockAheadOfBook) {
    return {ClockDoubt::ahead_of_book, *last_entry};
  }
  return {};
}

namespace {

Word word_of(ClockDoubt doubt) {
  switch (doubt) {
    case ClockDoubt::before_build:
      return Word::clock_before_build;
    case ClockDoubt::behind_book:
      return Word::clock_behind;
    case ClockDoubt::ahead_of_book:
      return Word::clock_ahead;
    case ClockDoubt::far_ahead:
    case ClockDoubt::none:
      break;
  }
  return Word::clock_far;
}

}  // namespace

void draw_clock_question(Stage& stage, const ClockQuestion& question) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const Box all = Box{0, 0, static_cast<float>(canvas.scale().width_px()),
                      static_cast<float>(canvas.scale().height_px())}
                      .inset(gap);
  Box in = panel_with_title(stage, all, say(Word::clock_title));
  const Box foot = in.cut_bottom(canvas.mm(20), gap);
  in.y0 += canvas.mm(2);
  canvas.text(say(Word::clock_says, say.day(stage.now), say.clock_short(stage.now)),
              in.cut_top(canvas.height(Face::title), gap),
              {.face = Face::title, .colours = canvas.on_panel()});
  canvas.text(say(word_of(question.doubt), say.day(question.against)),
              in.cut_top(2 * canvas.height(Face::body), gap),
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 2});
  canvas.text(say(Word::clock_do), in,
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 4});
  if (button(canvas, foot.column(0, 2, gap),
             {.id = "quit now", .text = say(Word::clock_set), .symbol = Symbol::clock})) {
    stage.intents.emplace_back(Quit{});
  }
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "clock right",
              .text = say(Word::clock_right),
              .look = Look::act,
              .symbol = Symbol::check})) {
    stage.intents.emplace_back(ClockIsRight{});
  }
}

}  // namespace rb::screens
