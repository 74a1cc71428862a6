#include "screens/live/ran_earlier.h"

#include <algorithm>
#include <array>

#include "screens/entry/clock_pad.h"
#include "screens/entry/paging.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

using RanStep = RanEarlierDraft::Step;

struct Nudge {
  const char* id;
  double by;  ///< s
};

// What was before the pour's end cannot be after now.
Moment latest_of(const Stage& stage, const PourView& view) {
  return view.closed ? std::min(*view.closed, stage.now) : stage.now;
}

std::string nudge_text(const Say& say, double by) {
  const std::string sign = by < 0 ? "\u2212" : "+";
  const double size = by < 0 ? -by : by;
  return size < 60 ? fmt::format("{}{:g} s", sign, size)
                   : fmt::format("{}{:g} {}", sign, size / 60, say(Word::minutes_short));
}

// A figure with a step less and a step more at either side; what was tapped, in seconds.
template <std::size_t N>
double draw_nudges(Stage& stage, const Box& line, const std::array<Nudge, N>& nudges,
                   const std::function<bool(double)>& can) {
  double tapped = 0;
  for (std::size_t i = 0; i < N; ++i) {
    const Nudge& nudge = nudges.at(i);
    const Box at = line.column(static_cast<int>(i), static_cast<int>(N), stage.canvas.gap());
    if (button(stage.canvas, at,
               {.id = nudge.id,
                .text = nudge_text(stage.say, nudge.by),
                .enabled = can(nudge.by),
                .repeats = true})) {
      tapped = nudge.by;
    }
  }
  return tapped;
}

void draw_ran_form(Stage& stage, const Box& box, RanEarlierDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(
      stage, box, say(Word::ran_earlier_title, row_name(say, draft.place, view.two_sides)));
  const Moment latest = latest_of(stage, view);
  if (!draft.from) draft.from = after(latest, -draft.span - seconds(60));
  const auto ends = [&](Moment from, Seconds span) { return after(from, span); };
  const bool good = ends(*draft.from, draft.span) <= latest;
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  back_button(stage, foot.column(0, 2, gap), Word::cancel);
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "next",
              .text = say(Word::next_step),
              .look = Look::act,
              .symbol = Symbol::forward,
              .enabled = good})) {
    draft.step = RanStep::why;
  }
  const float tall = std::max(canvas.scale().target(), canvas.mm(16));
  if (button(canvas, in.cut_top(tall, gap),
             {.id = "ran from",
              .text = say(Word::ran_from, say.clock_short(*draft.from)),
              .under = say(Word::ran_type),
              .symbol = Symbol::clock})) {
    draft.step = RanStep::clock;
    draft.typed.clear();
  }
  constexpr std::array kFrom{Nudge{"from -600", -600}, Nudge{"from -60", -60},
                             Nudge{"from +60", 60}, Nudge{"from +600", 600}};
  const double from = draw_nudges(stage, in.cut_top(tall, gap), kFrom, [&](double by) {
    return ends(after(*draft.from, Seconds{by}), draft.span) <= latest;
  });
  draft.from = after(*draft.from, Seconds{from});
  Box line = in.cut_top(tall, gap);
  const Box told = line.cut_left(line.w() / 2, gap);
  canvas.text(say(Word::ran_for, static_cast<int>(draft.span.count())), told,
              {.face = Face::strong, .colours = canvas.on_panel()});
  constexpr std::array kSpan{Nudge{"for -10", -10}, Nudge{"for +10", 10}};
  const double span = draw_nudges(stage, line, kSpan, [&](double by) {
    const Seconds would = draft.span + Seconds{by};
    return would > Seconds{0} && ends(*draft.from, would) <= latest;
  });
  draft.span += Seconds{span};
  if (view.closed) {
    canvas.text(say(Word::ran_closed), in,
                {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 2});
  }
}

void draw_ran_why(Stage& stage, const Box& box, const RanEarlierDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::ran_why));
  back_button(stage, in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap),
              Word::cancel);
  using event::Chosen;
  constexpr std::array kReasons{Chosen::tapped_late, Chosen::told_later};
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(21));
  for (std::size_t i = 0; i <= kReasons.size(); ++i) {
    const bool other = i == kReasons.size();
    if (!button(canvas, in.line(static_cast<int>(i), 3, gap),
                {.id = "why " + std::to_string(i),
                 .text = other ? say(Word::why_typed)
                               : std::string{told(say.language, event::says(kReasons.at(i)))},
                 .look = other ? Look::quiet : Look::act,
                 .symbol = other ? Symbol::pencil : Symbol::none})) {
      continue;
    }
    stage.close();
    if (other) {
      stage.open(TypeDraft{.use = TypeDraft::Use::ran_earlier, .ran = draft});
    } else {
      keep_ran_earlier(stage, draft, event::says(kReasons.at(i)), kReasons.at(i));
    }
  }
}

}  // namespace

void keep_ran_earlier(Stage& stage, const RanEarlierDraft& draft, const std::string& why,
                      std::optional<event::Chosen> chosen) {
  if (!draft.from) return;
  stage.keep(event::Run{draft.place, {}}, *draft.from);
  stage.keep(event::Rest{draft.place}, after(*draft.from, draft.span));
  // Why it came late stands beside it, where it ran.
  stage.keep(event::Note{why, draft.place.element, {}, chosen}, after(*draft.from, draft.span));
}

void draw_ran_earlier(Stage& stage, const Box& box, RanEarlierDraft& draft, const PourView& view) {
  switch (draft.step) {
    case RanStep::form:
      return draw_ran_form(stage, box, draft, view);
    case RanStep::why:
      return draw_ran_why(stage, box, draft);
    case RanStep::clock:
      break;
  }
  const Moment latest = after(latest_of(stage, view), -draft.span);
  const PanelEnd end = draw_clock_pad(stage, box, stage.say(Word::ran_when), draft.typed, latest);
  if (end == PanelEnd::kept) draft.from = typed_clock(draft.typed, latest, stage.say.utc_offset);
  if (end != PanelEnd::open) draft.step = RanStep::form;
}

}  // namespace rb::screens
