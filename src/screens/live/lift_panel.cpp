#include "screens/live/lift_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/insert_panel.h"
#include "screens/entry/ready_panel.h"
#include "screens/live/next_panel.h"

namespace rb::screens {

namespace {

std::string title(const Say& say, const LiftView& lift) {
  if (lift.placing) {
    return say(Word::lift_placing, *lift.placing, std::max(lift.planned, *lift.placing));
  }
  if (!lift.latest) return say(Word::lift_first, lift.planned);
  if (lift.planned == 0) return say(Word::lift_placed, *lift.latest, *lift.latest);
  if (lift.next > lift.planned) return say(Word::lifts_all_placed, lift.planned);
  return say(Word::lift_placed, *lift.latest, lift.planned);
}

std::string top_words(const Say& say, const LiftView& lift) {
  std::string top = lift.low == lift.high
                        ? say(Word::top_now, say.height(lift.high))
                        : say(Word::top_between, say.height_bare(lift.low), say.height(lift.high));
  if (!lift.planned_top) return top;
  return top + " \u00B7 " + say(Word::planned_to, say.height_bare(*lift.planned_top));
}

// Measured against allowed: a bar with the limit marked by a post, and the same in words.
void draw_rise(Stage& stage, Box& in, const LiftView& lift) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  if (!lift.latest) return;
  const Box line = in.cut_top(canvas.height(Face::small));
  const TextStyle plain{.face = Face::small, .colours = canvas.on_panel()};
  if (lift.no_rate) {
    tag(canvas, line, Symbol::stop_sign, say(Word::rise_no_rate), Look::stop);
    return;
  }
  if (!lift.rise) {
    canvas.text(say(Word::rise_unknown), line, plain);
    return;
  }
  if (lift.rise_unjudged && !lift.fast) {
    tag(canvas, line, Symbol::note_sign, say(Word::rise_no_start), Look::off);
    return;
  }
  if (!lift.rise_limit) {
    canvas.text(say(Word::rise_limit_none, say.rise(*lift.rise)), line, plain);
    return;
  }
  const std::string measured = say.rise_bare(*lift.rise);
  const std::string allowed = say.rise(*lift.rise_limit);
  if (lift.fast) {
    tag(canvas, line, Symbol::stop_sign, say(Word::rise_over, measured, allowed), Look::stop);
  } else if (lift.near_limit) {
    tag(canvas, line, Symbol::mend_sign, say(Word::rise_near, measured, allowed), Look::mend);
  } else {
    canvas.text(say(Word::rise_within, measured, allowed), line, plain);
  }
  if (in.h() < canvas.mm(3)) return;
  in.cut_top(canvas.mm(0.6));
  gauge(canvas, in.cut_top(canvas.mm(2.4)), lift.rise->value(), lift.rise_limit->value(),
        lift.fast         ? Look::stop
        : lift.near_limit ? Look::mend
                          : Look::quiet);
}

void draw_status(Stage& stage, Box box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box first = box.cut_top(canvas.height(Face::strong));
  if (view.lift.placing && view.lift.since) {
    const std::string since = timer(between(*view.lift.since, view.now));
    const Box clock = first.cut_right(canvas.width(since, Face::strong) + canvas.mm(0.5));
    canvas.text(since, clock,
                {.face = Face::strong, .colours = canvas.on_panel(), .across = Across::right});
  }
  canvas.text(title(say, view.lift), first, {.face = Face::strong, .colours = canvas.on_panel()});
  if (view.hold) {
    const Box held = box.cut_top(canvas.height(Face::small));
    tag(canvas, held, Symbol::hold,
        say(Word::on_hold_since, span_text(between(view.hold->since, view.now)),
            view.hold->moved    ? told(say.language, event::Moved::says(*view.hold->moved))
            : view.hold->chosen ? told(say.language, event::says(*view.hold->chosen))
                                : view.hold->reason),
        Look::live, Face::small, true);
  } else {
    canvas.text(top_words(say, view.lift), box.cut_top(canvas.height(Face::small)),
                {.face = Face::small, .colours = canvas.on_panel()});
  }
  if (box.h() < canvas.height(Face::small) - 1) return;
  // A joint about to set, or any while nothing is placed, counts for more than the rise.
  const bool soon = !view.knit.empty() && (view.hold || view.knit.front().gone ||
                                           between(view.now, view.knit.front().by) < kKnitSoon);
  if (soon && (view.hold || !(view.lift.fast || view.lift.no_rate))) {
    const KnitView& knit = view.knit.front();
    const bool near_set = knit.gone || between(view.now, knit.by) < kKnitSoon;
    const Box line = box.cut_top(canvas.height(Face::small));
    std::string words = knit_words(say, view, knit);
    if (!knit.gone && canvas.width(words, Face::small) > line.w() - canvas.mm(6.5)) {
      // Narrow: the moment without how long it is to it.
      words = fmt::format("{} {}, {}", say(Word::knit_bay_by), say.clock_short(knit.by),
                          say(Word::place_bay, knit.bay + 1));
    }
    tag(canvas, line, near_set ? Symbol::mend_sign : Symbol::clock, words,
        near_set ? Look::mend : Look::well);
  } else {
    draw_rise(stage, box, view.lift);
  }
}

void open_pad(Stage& stage, PadDraft::Use use, const PourView& view) {
  stage.open(
      PadDraft{.use = use,
               .element = view.element_id,
               .lift = view.lift.placing.value_or(0),
               .guess = use == PadDraft::Use::top ? view.lift.guess_top : view.lift.guess_end,
               .at = stage.tapped()});
}

void draw_lift_buttons(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const bool can = !view.closed.has_value();
  if (!view.lift.placing) {
    const bool done = view.lift.planned > 0 && view.lift.next > view.lift.planned;
    if (button(canvas, box,
               {.id = "lift-start",
                .text = say(Word::start_lift, view.lift.next),
                .look = done ? Look::quiet : Look::act,
                .symbol = Symbol::rise,
                .face = Face::title,
                .enabled = can && !view.hold})) {
      if (view.lift.gates.empty()) {
        stage.keep(event::LiftStart{view.element_id, view.lift.next});
      } else {
        stage.open(GateDraft{.element = view.element_id, .lift = view.lift.next});
      }
    }
    return;
  }
  const float gap = canvas.gap();
  Box rest = box;
  const Box top = rest.cut_left(std::round(box.w() * 0.36F), gap);
  if (button(canvas, top,
             {.id = "top",
              .text = say(Word::top_reading),
              .symbol = Symbol::level,
              .face = Face::strong,
              .enabled = can,
              .symbol_above = true})) {
    open_top_pad(stage, view);
  }
  if (button(canvas, rest,
             {.id = "lift-end",
              .text = say(Word::end_lift, *view.lift.placing),
              .look = Look::act,
              .symbol = Symbol::check,
              .face = Face::strong,
              .enabled = can,
              .symbol_above = true})) {
    open_pad(stage, PadDraft::Use::lift_end, view);
  }
}

}  // namespace

void open_top_pad(Stage& stage, const PourView& view) {
  open_pad(stage, PadDraft::Use::top, view);
}

void draw_lift(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  panel(canvas, box);
  Box in = box.inset(canvas.mm(2.2), canvas.mm(1.6));
  const Box actions = in.cut_bottom(canvas.scale().target(), gap);
  const float status =
      canvas.height(Face::strong) + 2 * canvas.height(Face::small) + canvas.mm(4.4);
  Box buttons = in;
  const Box words =
      buttons.cut_top(std::min(status, in.h() - canvas.scale().target() - gap), canvas.mm(1));
  buttons.y1 = std::min(buttons.y1, buttons.y0 + canvas.mm(24));
  draw_status(stage, words, view);
  draw_lift_buttons(stage, offer_ready(stage, buttons, view), view);
  const bool can = !view.closed.has_value();
  const auto place = [&](int i) { return actions.column(i, 3, gap); };
  if (view.hold) {
    if (button(canvas, place(0),
               {.id = "hold",
                .text = say(Word::resume),
                .look = Look::live,
                .face = Face::small,
                .enabled = can})) {
      if (view.hold->moved) {
        stage.open(ResumeDraft{stage.tapped()});
      } else {
        stage.keep(event::Resume{});
      }
    }
  } else if (button(canvas, place(0),
                    {.id = "hold",
                     .text = say(Word::hold),
                     .symbol = Symbol::hold,
                     .enabled = can,
                     .symbol_above = true})) {
    stage.open(HoldDraft{stage.tapped()});
  }
  if (button(canvas, place(1),
             {.id = "note",
              .text = say(Word::note),
              .symbol = Symbol::note,
              .enabled = can,
              .symbol_above = true})) {
    stage.open(NoteDraft{stage.tapped()});
  }
  if (button(canvas, place(2),
             {.id = "insert",
              .text = say(Word::insert),
              .symbol = Symbol::down,
              .enabled = can && view.insert.lift > 0,
              .symbol_above = true})) {
    stage.open(new_insert(view, stage.tapped()));
  }
}

}  // namespace rb::screens
