#include "screens/live/gate_dialog.h"

#include <algorithm>

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

TypeDraft going_on(const GateDraft& draft, const std::vector<Gate>& gates) {
  TypeDraft then{.use = TypeDraft::Use::gate};
  for (const Gate gate : gates) {
    event::Override over;
    over.rule = rule_of(gate);
    over.element = draft.element;
    if (draft.place) {
      over.side = draft.place->side;
      over.row = draft.place->row;
      over.lift = draft.lift;
    }
    then.gates.push_back(std::move(over));
  }
  if (draft.place) {
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

// A line for each thing that is not in order; of the head with its figures.
void list_gates(Stage& stage, Box& in, const std::vector<Gate>& gates, const RowView* row) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  for (const Gate gate : gates) {
    std::string words{told(say.language, words_of(gate))};
    if (gate == Gate::head_over && row != nullptr) words += ": " + head_words(say, *row);
    tag(canvas, in.cut_top(canvas.height(Face::strong), canvas.mm(0.8)),
        gate == Gate::head_over || gate == Gate::over_set ? Symbol::stop_sign : Symbol::mend_sign,
        words, gate == Gate::head_over ? Look::stop : Look::mend, Face::strong);
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
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const RowView* row = draft.place ? row_of(view, draft) : nullptr;
  const auto& gates = row != nullptr ? row->gates : view.lift.gates;
  // It may have been put right, or done, in the meantime.
  if ((draft.place && (row == nullptr || row->running_since)) || view.closed ||
      (!draft.place && view.lift.placing)) {
    stage.close();
    return;
  }
  if (view.hold && view.hold->moved) return draw_keep_away(stage, box);
  if (gates.empty()) {
    stage.close();
    return;
  }
  Box in = panel_with_title(
      stage, box,
      draft.place ? say(Word::gate_run_title, row_name(say, *draft.place, view.two_sides))
                  : say(Word::gate_lift_title, draft.lift));
  Box foot = gate_foot(stage, in);
  list_gates(stage, in, gates, row);
  const std::string by = by_whom(stage, plan);
  canvas.text(say(Word::gate_says, by), in.cut_top(3 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small,
               .colours = canvas.on_panel(),
               .down = Down::top,
               .lines = 3,
               .free_text = true});
  // The way to put it right comes first.
  const Box right = foot.cut_right((foot.w() - gap) / 2, gap);
  if (button(canvas, foot,
             {.id = "back",
              .text = say(draft.place ? Word::do_not_run : Word::do_not_start),
              .look = Look::act,
              .symbol = Symbol::back})) {
    stage.close();
  }
  const bool cables = std::any_of(gates.begin(), gates.end(), [](Gate gate) {
    return gate == Gate::not_hung || gate == Gate::cables_open;
  });
  const bool walk = std::find(gates.begin(), gates.end(), Gate::walk_down) != gates.end();
  if (cables && button(canvas, right,
                       {.id = "hang fixed",
                        .text = say(Word::hang_cables_fixed),
                        .look = Look::act,
                        .symbol = Symbol::check})) {
    stage.keep(event::Hang{*draft.place, {}, true});
    stage.close();
  } else if (!cables && walk &&
             button(canvas, right,
                    {.id = "ready",
                     .text = say(Word::ready),
                     .look = Look::act,
                     .symbol = Symbol::list})) {
    stage.open(ReadyDraft{});
  }
  constexpr int kReasons = static_cast<int>(kReasonsToGoOn.size()) + 1;
  in.y1 = std::min(in.y1, in.y0 + 2 * canvas.mm(22));
  const TypeDraft then = going_on(draft, gates);
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
