#include "screens/correct/correct_dialog.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "pour/log/event_json.h"
#include "pour/log/kind_fields.h"
#include "screens/correct/correct_steps.h"
#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"
#include "screens/entry/plan_tiles.h"
#include "screens/entry/told_later.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

Event as_tapped(const CorrectDraft& draft) {
  return event_of({draft.target, draft.at, draft.what});
}

using Step = CorrectDraft::Step;

bool has_height(const Happening& what) {
  return std::holds_alternative<event::Top>(what) || std::holds_alternative<event::LiftEnd>(what);
}

Length height_of(const Happening& what) {
  if (const auto* top = std::get_if<event::Top>(&what)) return top->height;
  if (const auto* end = std::get_if<event::LiftEnd>(&what)) return end->height;
  return {};
}

template <class What>
auto place_in(What& what) {
  std::conditional_t<std::is_const_v<What>, const RowPlace, RowPlace>* place = nullptr;
  std::visit(
      [&](auto& e) {
        if constexpr (requires { e.place; }) place = &e.place;
      },
      what);
  return place;
}

bool has_row(const Happening& what) {
  return place_in(what) != nullptr;
}

std::string reads(const Stage& stage, const Event& event, const PourView& view) {
  return stage.say.clock(event.at) + "  " + event_words(stage.say, event.what, view.naming);
}

void draw_said(Stage& stage, Box& in, Word label, const std::string& text) {
  Canvas& canvas = stage.canvas;
  canvas.text(stage.say(label), in.cut_top(canvas.height(Face::small)),
              {.face = Face::small, .colours = canvas.soft()});
  canvas.text(text, in.cut_top(canvas.height(Face::strong), canvas.mm(2)),
              {.face = Face::strong, .colours = canvas.on_panel(), .free_text = true});
}

void draw_foot(Stage& stage, Box& in, CorrectDraft& draft, bool next) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Box foot = in.cut_bottom(canvas.scale().target(), gap);
  if (draft.step == Step::choose) {
    back_button(stage, foot.column(0, 2, gap), Word::cancel);
  } else if (button(canvas, foot.column(0, 2, gap),
                    {.id = "back", .text = stage.say(Word::back), .symbol = Symbol::back})) {
    // Starting over: what was changed on the way is forgotten.
    draft = CorrectDraft{.target = draft.target,
                         .at = draft.at,
                         .what = std::move(draft.what),
                         .stepped = draft.stepped};
    return;
  }
  if (draft.step == Step::choose || draft.step == Step::why) return;
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "next",
              .text = stage.say(Word::next_step),
              .look = Look::act,
              .symbol = Symbol::forward,
              .enabled = next})) {
    draft.step = Step::why;
  }
}

// Where a field is changed: figures and times of day take the whole panel.
Step step_of(CorrectField field) {
  switch (field) {
    case CorrectField::lift:
    case CorrectField::bay:
      return Step::number;
    case CorrectField::motors:
      return Step::motors;
    case CorrectField::batched:
      return Step::batched;
    case CorrectField::ticket:  // typed on the letters' keys
    case CorrectField::volume:
    case CorrectField::slump:
    case CorrectField::temp:
      break;
  }
  return Step::figure;
}

void begin_field(Stage& stage, CorrectDraft& draft, CorrectField field, const TapList& taps) {
  draft.field = static_cast<int>(field);
  draft.typed.clear();
  draft.turn = 0;
  if (field == CorrectField::ticket) {
    take_along_ticket(draft, taps);
    stage.drafts.figures = true;
    stage.open(TypeDraft{.use = TypeDraft::Use::new_ticket, .correcting = draft});
  } else {
    draft.step = step_of(field);
  }
}

void draw_choose(Stage& stage, Box in, CorrectDraft& draft, const TapList& taps) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  struct Choice {
    std::string id;
    Word word;
    Symbol symbol;
    std::function<void()> chosen;
  };
  const auto to = [&](Step step) { return [&draft, step] { draft.step = step; }; };
  std::vector<Choice> choices{{"correct time", Word::correct_time, Symbol::clock, to(Step::time)}};
  if (has_height(draft.what)) {
    choices.push_back({"correct height", Word::correct_height, Symbol::level, to(Step::height)});
  }
  if (has_row(draft.what)) {
    choices.push_back({"correct row", Word::correct_row, Symbol::list, to(Step::row)});
  }
  for (const CorrectField field : fields_to_correct(draft.what)) {
    choices.push_back({"correct field " + std::to_string(static_cast<int>(field)),
                       correct_word(field), Symbol::pencil,
                       [&stage, &draft, &taps, field] { begin_field(stage, draft, field, taps); }});
  }
  choices.push_back({"correct strike", Word::correct_strike, Symbol::cross, [&draft] {
                       draft.step = Step::why;
                       draft.strike = true;
                     }});
  const int lines = (static_cast<int>(choices.size()) + 1) / 2;
  in.y1 = std::min(in.y1, in.y0 + static_cast<float>(lines) * canvas.mm(23));
  int i = 0;
  for (const Choice& choice : choices) {
    const Box box = in.line(i / 2, lines, gap).column(i % 2, 2, gap);
    ++i;
    if (button(canvas, box,
               {.id = choice.id, .text = stage.say(choice.word), .symbol = choice.symbol})) {
      choice.chosen();
    }
  }
}

void draw_time(Stage& stage, Box in, CorrectDraft& draft) {
  Canvas& canvas = stage.canvas;
  struct Shift {
    const char* id;
    Word word;
    double seconds;
  };
  constexpr std::array kShifts{
      Shift{"shift -60", Word::earlier_minute, -60}, Shift{"shift +60", Word::later_minute, 60},
      Shift{"shift -10", Word::earlier_ten, -10}, Shift{"shift +10", Word::later_ten, 10}};
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(21));
  if (button(canvas, in.line(2, 3, canvas.gap()),
             {.id = "type time", .text = stage.say(Word::correct_type), .symbol = Symbol::clock})) {
    draft.typed.clear();
    draft.step = Step::clock;
  }
  for (int i = 0; i < 4; ++i) {
    const Shift& shift = kShifts[static_cast<std::size_t>(i)];
    const Box box = in.line(i / 2, 3, canvas.gap()).column(i % 2, 2, canvas.gap());
    const Seconds would = draft.shift + Seconds{shift.seconds};
    // What has not happened yet cannot be logged.
    const bool can = after(draft.at, would - draft.stepped) <= stage.now;
    if (button(canvas, box,
               {.id = shift.id, .text = stage.say(shift.word), .enabled = can, .repeats = true})) {
      draft.shift = would;
    }
  }
}

void draw_height(Stage& stage, Box in, CorrectDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Box keys = in.cut_left(std::round(in.w() * 0.5F), canvas.gap());
  draw_keys(stage, keys, draft.typed);
  in.y1 = std::min(in.y1, in.y0 + canvas.mm(44));
  draw_value(stage, in, draft.typed, height_of(draft.what));
  draft.height = draft.typed.empty() ? std::nullopt : typed_height(draft.typed, stage.say.units);
}

void draw_row_choice(Stage& stage, const Box& in, CorrectDraft& draft, const Plan& plan) {
  const RowPlace* tapped = place_in(draft.what);
  const Element* element = tapped == nullptr ? nullptr : plan.find(tapped->element);
  if (element == nullptr) return;
  const bool two = element->has_rows(Side::near_side) && element->has_rows(Side::far_side);
  std::vector<Tile> tiles;
  std::vector<RowPlace> places;
  for (auto row = element->rows.rbegin(); row != element->rows.rend(); ++row) {
    places.push_back({element->id, row->side, row->id});
    const bool on = draft.place && *draft.place == places.back();
    tiles.push_back({.id = "choose row " + row->id.text + " " + to_text(row->side),
                     .value = row_name(stage.say, places.back(), two),
                     .label = stage.say.height(row->z),
                     .free_text = true,
                     .symbol = on ? Symbol::check : Symbol::none,
                     .look = on ? Look::act : Look::quiet});
  }
  const int tapped_at = draw_tiles(stage, in, tiles, tiles.size() > 4 ? 3 : 2, draft.turn);
  if (tapped_at >= 0) draft.place = places[static_cast<std::size_t>(tapped_at)];
}

void draw_why(Stage& stage, Box in, CorrectDraft& draft) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  using event::Chosen;
  constexpr std::array kReasons{Chosen::tapped_by_mistake, Chosen::wrong_row,
                                Chosen::misread_height, Chosen::tapped_late, Chosen::told_later};
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(21));
  for (std::size_t i = 0; i <= kReasons.size(); ++i) {
    const Box box =
        in.line(static_cast<int>(i / 2), 3, gap).column(static_cast<int>(i % 2), 2, gap);
    if (i == kReasons.size()) {
      if (button(
              canvas, box,
              {.id = "why typed", .text = stage.say(Word::why_typed), .symbol = Symbol::pencil})) {
        stage.open(TypeDraft{.use = TypeDraft::Use::why, .correcting = draft});
      }
    } else if (button(canvas, box,
                      {.id = "why " + std::to_string(i),
                       .text = std::string{told(stage.say.language, event::says(kReasons[i]))},
                       .look = Look::act})) {
      keep_correction(stage, draft, event::says(kReasons[i]), kReasons[i]);
      stage.close();
    }
  }
}

}  // namespace

Event corrected(const CorrectDraft& draft) {
  Event event = as_tapped(draft);
  if (draft.edited) event.what = *draft.edited;
  for_moments(event, [&](Moment& moment) { moment = after(moment, draft.shift); });
  if (draft.height) {
    if (auto* top = std::get_if<event::Top>(&event.what)) top->height = *draft.height;
    if (auto* end = std::get_if<event::LiftEnd>(&event.what)) end->height = *draft.height;
  }
  RowPlace* place = place_in(event.what);
  if (draft.place && place != nullptr) *place = *draft.place;
  return event;
}

void keep_correction(Stage& stage, const CorrectDraft& draft, const std::string& why,
                     std::optional<event::Chosen> chosen) {
  if (draft.strike) {
    stage.keep(event::Strike{draft.target, why, chosen});
  } else {
    stage.keep(make_fix(as_tapped(draft), corrected(draft), why, chosen));
  }
  const auto* truck =
      draft.strike || !draft.edited ? nullptr : std::get_if<event::Truck>(&*draft.edited);
  if (truck == nullptr) return;
  for (const ToldTap& along : draft.along) {
    ToldTap mended = along;
    put_ticket(mended.what, truck->ticket.text);
    stage.keep(make_fix(event_of(along), event_of(mended), why, chosen));
  }
}

namespace {

void draw_correct_panel(Stage& stage, const Box& box, CorrectDraft& draft, const PourView& view,
                        const Plan& plan) {
  Box in = panel_with_title(stage, box, stage.say(Word::correct_title));
  if (draft.step == Step::choose || draft.step == Step::why) {
    draw_said(stage, in, Word::correct_reads, reads(stage, as_tapped(draft), view));
  }
  const bool changed = draft.shift != Seconds{0} || draft.height || draft.place ||
                       (draft.edited && !(*draft.edited == draft.what));
  if (draft.step != Step::choose && draft.step != Step::height) {
    draw_said(stage, in, Word::correct_to,
              draft.strike ? stage.say(Word::struck) : reads(stage, corrected(draft), view));
  }
  const Step step = draft.step;
  draw_foot(stage, in, draft, changed);
  if (draft.step != step) return;  // the next frame shows what the tap led to
  switch (step) {
    case Step::choose:
      draw_choose(stage, in, draft, view.taps);
      break;
    case Step::time:
      draw_time(stage, in, draft);
      break;
    case Step::height:
      draw_height(stage, in, draft);
      break;
    case Step::row:
      draw_row_choice(stage, in, draft, plan);
      break;
    case Step::number:
      draw_number_step(stage, in, draft,
                       static_cast<CorrectField>(draft.field) == CorrectField::lift
                           ? static_cast<std::size_t>(view.elements[view.element].planned)
                           : view.elevation.bays.size());
      break;
    case Step::motors:
      draw_motors_step(stage, in, draft, plan);
      break;
    case Step::clock:
    case Step::figure:
    case Step::batched:
      break;
    case Step::why:
      stage.canvas.text(stage.say(Word::correct_why), in.cut_top(stage.canvas.height(Face::small)),
                        {.face = Face::small, .colours = stage.canvas.soft()});
      in.y0 += stage.canvas.mm(2);
      draw_why(stage, in, draft);
      break;
  }
}

}  // namespace

void draw_correct(Stage& stage, const Box& box, CorrectDraft& draft, const PourView& view,
                  const Plan& plan) {
  // Steps that take the whole panel; each leads to the reason.
  bool done = false;
  if (draft.step == Step::clock) {
    done = draw_clock_step(stage, box, draft);
  } else if (draft.step == Step::figure) {
    done = draw_figure_step(stage, box, draft);
  } else if (draft.step == Step::batched) {
    done = draw_batched_step(stage, box, draft);
  } else {
    return draw_correct_panel(stage, box, draft, view, plan);
  }
  if (done) draft.step = Step::why;
}

}  // namespace rb::screens
