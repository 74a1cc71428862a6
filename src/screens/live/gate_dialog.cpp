#include "screens/live/gate_dialog.h"

#include <algorithm>
#include <initializer_list>

#include "screens/entry/paging.h"
#include "screens/live/rows_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

const RowView* row_of(const PourView& view, const GateDraft& draft) {
  const auto row = std::find_if(view.rows.begin(), view.rows.end(),
                                [&](const RowView& r) { return r.place == draft.place; });
  return row == view.rows.end() ? nullptr : &*row;
}

const StripView* strip_of(const PourView& view, const GateDraft& draft) {
  if (view.element_id != draft.element) return nullptr;
  const auto strip = std::find_if(view.strips.begin(), view.strips.end(),
                                  [&](const StripView& s) { return s.side == draft.strip; });
  return strip == view.strips.end() ? nullptr : &*strip;
}

// What stands before the lift, the row or the face.
struct Before {
  const RowView* row = nullptr;
  const StripView* strip = nullptr;
  std::vector<Gate> gates;
};

// None: it may have been put right, or done, in the meantime.
std::optional<Before> stands_before(const GateDraft& draft, const PourView& view) {
  Before at;
  if (draft.strip) {  // that is done after the close as well
    at.strip = strip_of(view, draft);
    if (at.strip == nullptr) return std::nullopt;
    at.gates = at.strip->gates;
    return at;
  }
  if (view.closed) return std::nullopt;
  if (!draft.place) {
    if (view.lift.placing) return std::nullopt;
    at.gates = view.lift.gates;
    return at;
  }
  at.row = row_of(view, draft);
  if (at.row == nullptr || at.row->running_since) return std::nullopt;
  at.gates = at.row->gates;
  return at;
}

TypeDraft going_on(const GateDraft& draft, const std::vector<Gate>& gates) {
  TypeDraft then{.use = TypeDraft::Use::gate};
  for (const Gate gate : gates) {
    event::Override over;
    over.rule = rule_of(gate);
    over.element = draft.element;
    over.side = draft.strip;
    if (draft.place) {
      over.side = draft.place->side;
      over.row = draft.place->row;
      over.lift = draft.lift;
    }
    then.gates.push_back(std::move(over));
  }
  if (draft.strip) {
    then.then = event::Strip{draft.element, *draft.strip};
  } else if (draft.place) {
    then.then = event::Run{*draft.place, std::nullopt};
  } else {
    then.then = event::LiftStart{draft.element, draft.lift};
  }
  return then;
}

std::string by_whom(Stage& stage, const Plan& plan) {
  const Person* holder = holder_of(plan, stage.settings.holder);
  if (holder == nullptr) return stage.say(Word::gate_by_nobody);
  return stage.say(Word::gate_by, holder->name.empty() ? holder->id.text : holder->name);
}

Box gate_foot(Stage& stage, Box& in) {
  return in.cut_bottom(std::max(stage.canvas.scale().target(), stage.canvas.mm(17)),
                       stage.canvas.gap());
}

// Nothing leads over this but that the area is told clear.
void draw_keep_away(Stage& stage, const Box& box) {
  Canvas& canvas = stage.canvas;
  Box in = panel_with_title(stage, box, stage.say(Word::gate_title));
  back_button(stage, gate_foot(stage, in));
  canvas.text(stage.say(Word::gate_moved), in,
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 9});
}

// Why a face is not to be stripped, in figures: those that the rule would tell.
std::vector<std::string> strip_figures(const Say& say, const StripVerdict& verdict) {
  std::vector<std::string> lines;
  // What is shown never looks as if it were enough.
  const auto strength = [&](Pressure p, Rounding rounding) {
    return amount_text(Amount{Measure::strength, in_megapascals(p)}, say.units, rounding);
  };
  if (const auto& soon = verdict.soon) {
    lines.push_back(say(soon->planned ? Word::strip_soon : Word::strip_unset,
                        say.amount(rb::amount(soon->waited, Measure::any_span)),
                        say.amount(rb::amount(soon->least, Measure::any_span))));
  }
  if (const auto& weak = verdict.weak) {
    const std::string least = strength(weak->least, Rounding::up);
    lines.push_back(weak->shown
                        ? say(Word::strip_weak, strength(*weak->shown, Rounding::down), least)
                        : say(Word::strip_unshown, least));
  }
  if (verdict.without_leave()) {
    lines.push_back(say(verdict.leave == StripLeave::none ? Word::strip_no_leave
                        : verdict.leave == StripLeave::before_concrete
                            ? Word::strip_leave_before
                            : Word::strip_leave_no_role));
  }
  return lines;
}

bool stops(Gate gate) {
  return gate == Gate::head_over || gate == Gate::over_set || gate == Gate::strip_early ||
         gate == Gate::strip_leave;
}

// A line for each thing that is not in order; of the head and of a face with their figures.
void list_gates(Stage& stage, Box& in, const Before& at) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  for (const Gate gate : at.gates) {
    std::string words{told(say.language, words_of(gate))};
    if (gate == Gate::head_over && at.row != nullptr) words += ": " + head_words(say, *at.row);
    tag(canvas, in.cut_top(canvas.height(Face::strong), canvas.mm(0.8)),
        stops(gate) ? Symbol::stop_sign : Symbol::mend_sign, words,
        stops(gate) && gate != Gate::over_set ? Look::stop : Look::mend, Face::strong);
  }
  if (at.strip == nullptr || !at.strip->verdict) return;
  for (const std::string& line : strip_figures(say, *at.strip->verdict)) {
    const int lines = canvas.width(line, Face::small) > in.w() ? 2 : 1;
    canvas.text(
        line, in.cut_top(static_cast<float>(lines) * canvas.height(Face::small), canvas.mm(0.8)),
        {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top, .lines = lines});
  }
}

std::string title_of_gate(const Say& say, const GateDraft& draft, const PourView& view) {
  if (draft.strip) {
    return say(Word::gate_strip_title,
               say(*draft.strip == Side::near_side ? Word::near_side : Word::far_side));
  }
  return draft.place ? say(Word::gate_run_title, row_name(say, *draft.place, view.two_sides))
                     : say(Word::gate_lift_title, draft.lift);
}

// The way to put it right comes first.
void draw_put_right(Stage& stage, Box foot, const GateDraft& draft,
                    const std::vector<Gate>& gates) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const Box right = foot.cut_right((foot.w() - gap) / 2, gap);
  if (button(canvas, foot,
             {.id = "back",
              .text = say(draft.strip   ? Word::do_not_strip
                          : draft.place ? Word::do_not_run
                                        : Word::do_not_start),
              .look = Look::act,
              .symbol = Symbol::back})) {
    stage.close();
  }
  const auto any = [&](std::initializer_list<Gate> of) {
    return std::any_of(gates.begin(), gates.end(), [&](Gate gate) {
      return std::find(of.begin(), of.end(), gate) != of.end();
    });
  };
  if (any({Gate::not_hung, Gate::cables_open})) {
    if (button(canvas, right,
               {.id = "hang fixed",
                .text = say(Word::hang_cables_fixed),
                .look = Look::act,
                .symbol = Symbol::check})) {
      stage.keep(event::Hang{*draft.place, {}, true});
      stage.close();
    }
  } else if (any({Gate::walk_down})) {
    if (button(
            canvas, right,
            {.id = "ready", .text = say(Word::ready), .look = Look::act, .symbol = Symbol::list})) {
      stage.open(ReadyDraft{});
    }
  } else if (any({Gate::strip_leave}) && button(canvas, right,
                                                {.id = "permit strip",
                                                 .text = say(Word::after_permit),
                                                 .look = Look::act,
                                                 .symbol = Symbol::pencil})) {
    stage.open(TypeDraft{.use = TypeDraft::Use::permit,
                         .permit = event::PermitStrip{draft.element, draft.strip, {}},
                         .at = stage.tapped()});
  }
}

void draw_reasons(Stage& stage, Box in, const TypeDraft& then) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  constexpr int kReasons = static_cast<int>(kReasonsToGoOn.size()) + 1;
  in.y1 = std::min(in.y1, in.y0 + 2 * canvas.mm(22));
  for (int i = 0; i < kReasons; ++i) {
    const bool other = i + 1 == kReasons;
    const event::Chosen reason = kReasonsToGoOn[other ? 0 : static_cast<std::size_t>(i)];
    if (!button(canvas, in.line(i / 2, 2, gap).column(i % 2, 2, gap),
                {.id = "gate " + std::to_string(i),
                 .text = other ? say(Word::gate_other)
                               : std::string{told(say.language, event::says(reason))},
                 .look = Look::quiet,
                 .symbol = other ? Symbol::pencil : Symbol::none,
                 .face = Face::small})) {
      continue;
    }
    stage.close();
    if (other) {
      stage.open(then);
    } else {
      keep_gone_on(stage, then, event::says(reason), reason);
    }
  }
}

}  // namespace

void keep_gone_on(Stage& stage, const TypeDraft& draft, const std::string& why,
                  std::optional<event::Chosen> chosen) {
  for (event::Override over : draft.gates) {
    over.why = why;
    over.chosen = chosen;
    stage.keep(std::move(over));
  }
  if (draft.then) stage.keep(*draft.then);
}

void draw_gate(Stage& stage, const Box& box, const GateDraft& draft, const PourView& view,
               const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const auto at = stands_before(draft, view);
  if (!at) {
    stage.close();
    return;
  }
  if (view.hold && view.hold->moved && !draft.strip) return draw_keep_away(stage, box);
  if (at->gates.empty()) {
    stage.close();
    return;
  }
  Box in = panel_with_title(stage, box, title_of_gate(stage.say, draft, view));
  const Box foot = gate_foot(stage, in);
  list_gates(stage, in, *at);
  canvas.text(stage.say(Word::gate_says, by_whom(stage, plan)),
              in.cut_top(3 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small,
               .colours = canvas.on_panel(),
               .down = Down::top,
               .lines = 3,
               .free_text = true});
  draw_put_right(stage, foot, draft, at->gates);
  draw_reasons(stage, in, going_on(draft, at->gates));
}

void draw_resume(Stage& stage, const Box& box, const ResumeDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::resume_title));
  const Box foot = gate_foot(stage, in);
  canvas.text(say(Word::resume_says, by_whom(stage, plan)), in,
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 9, .free_text = true});
  back_button(stage, foot.column(0, 2, gap), Word::cancel);
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "resume clear",
              .text = say(Word::resume_clear),
              .look = Look::live,
              .face = Face::small})) {
    constexpr event::Chosen kClear = event::Chosen::told_clear;
    stage.keep(event::Resume{event::says(kClear), kClear}, draft.at);
    stage.close();
  }
}

}  // namespace rb::screens
