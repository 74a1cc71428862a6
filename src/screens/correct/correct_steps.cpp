#include "screens/correct/correct_steps.h"

#include <algorithm>

#include "screens/entry/clock_pad.h"
#include "screens/entry/figure_pad.h"
#include "screens/entry/plan_tiles.h"

namespace rb::screens {

namespace {

Happening& edited(CorrectDraft& draft) {
  if (!draft.edited) draft.edited = draft.what;
  return *draft.edited;
}

const TicketId* ticket_in(const Happening& what) {
  if (const auto* truck = std::get_if<event::Truck>(&what)) return &truck->ticket;
  if (const auto* discharge = std::get_if<event::Discharge>(&what)) return &discharge->ticket;
  if (const auto* test = std::get_if<event::Test>(&what)) return &test->ticket;
  return nullptr;
}

}  // namespace

bool draw_clock_step(Stage& stage, const Box& box, CorrectDraft& draft) {
  const Moment latest = after(stage.now, draft.stepped);
  const PanelEnd end =
      draw_clock_pad(stage, box, stage.say(Word::correct_clock), draft.typed, latest);
  if (end == PanelEnd::kept) {
    draft.shift = between(draft.at, *typed_clock(draft.typed, latest, stage.say.utc_offset));
  }
  if (end == PanelEnd::cancelled) draft.step = CorrectDraft::Step::time;
  return end == PanelEnd::kept;
}

bool draw_figure_step(Stage& stage, const Box& box, CorrectDraft& draft) {
  const Units units = stage.say.units;
  const auto field = static_cast<CorrectField>(draft.field);
  if (!draft.figure) draft.figure = figure_in(draft.what, field, units);
  const auto typed = draw_typed(stage, box, draft.figure);
  if (typed && typed->value) put_figure(edited(draft), field, *typed->value, units);
  if (typed && typed->end == PanelEnd::cancelled) draft.step = CorrectDraft::Step::choose;
  return typed && typed->value;
}

bool draw_batched_step(Stage& stage, const Box& box, CorrectDraft& draft) {
  // A load is batched before it comes.
  const PanelEnd end =
      draw_clock_pad(stage, box, stage.say(Word::correct_batched), draft.typed, draft.at);
  if (end == PanelEnd::kept) {
    put_batched(edited(draft), *typed_clock(draft.typed, draft.at, stage.say.utc_offset));
  }
  if (end == PanelEnd::cancelled) draft.step = CorrectDraft::Step::choose;
  return end == PanelEnd::kept;
}

void draw_number_step(Stage& stage, const Box& in, CorrectDraft& draft, std::size_t most) {
  const auto field = static_cast<CorrectField>(draft.field);
  const auto now = number_in(draft.edited.value_or(draft.what), field);
  std::vector<Tile> tiles;
  tiles.reserve(most + 1);
  const auto add = [&](const std::string& id, const std::string& value, bool on) {
    tiles.push_back({.id = id,
                     .value = value,
                     .label = stage.say(correct_word(field)),
                     .symbol = on ? Symbol::check : Symbol::none,
                     .look = on ? Look::act : Look::quiet});
  };
  const bool all = field == CorrectField::bay && may_be_all(draft.what);
  if (all) add("number all", stage.say(Word::pad_all_bays), !now);
  for (std::size_t i = 1; i <= most; ++i) {
    add("number " + std::to_string(i), std::to_string(i), now == static_cast<int>(i));
  }
  const int tapped = draw_tiles(stage, in, tiles, 4, draft.turn);
  if (tapped < 0) return;
  const int number = tapped + (all ? 0 : 1);
  put_number(edited(draft), field, number == 0 ? std::nullopt : std::optional{number});
}

void draw_motors_step(Stage& stage, const Box& in, CorrectDraft& draft, const Plan& plan) {
  const auto* hang = std::get_if<event::Hang>(&draft.what);
  const Element* element = hang == nullptr ? nullptr : plan.find(hang->place.element);
  if (element == nullptr) return;
  const auto row = std::find_if(element->rows.begin(), element->rows.end(), [&](const Row& known) {
    return known.id == hang->place.row && known.side == hang->place.side;
  });
  if (row == element->rows.end()) return;
  // None named: all of the row's.
  std::vector<MotorId> hung = *motors_in(draft.edited.value_or(draft.what));
  if (hung.empty()) {
    for (const Motor& motor : row->motors) hung.push_back(motor.id);
  }
  std::vector<Tile> tiles;
  tiles.reserve(row->motors.size());
  const auto is_hung = [&](const MotorId& id) {
    return std::find(hung.begin(), hung.end(), id) != hung.end();
  };
  for (const Motor& motor : row->motors) {
    const bool on = is_hung(motor.id);
    tiles.push_back({.id = "motor " + motor.id.text,
                     .value = motor.id.text,
                     .label = stage.say(on ? Word::correct_hung : Word::correct_not_hung),
                     .free_text = true,
                     .symbol = on ? Symbol::check : Symbol::cross,
                     .look = on ? Look::act : Look::quiet});
  }
  const int tapped = draw_tiles(stage, in, tiles, 4, draft.turn);
  if (tapped < 0) return;
  const MotorId& motor = row->motors[static_cast<std::size_t>(tapped)].id;
  if (is_hung(motor)) {
    if (hung.size() > 1) std::erase(hung, motor);  // a row with none is taken down, not corrected
  } else {
    hung.push_back(motor);
  }
  put_motors(edited(draft), std::move(hung));
}

void take_along_ticket(CorrectDraft& draft, const TapList& taps) {
  draft.along.clear();
  const TicketId* ticket = ticket_in(draft.what);
  if (ticket == nullptr) return;
  for (std::size_t i = 0; i < taps.size(); ++i) {
    const TapView tap = taps[i];
    const TicketId* theirs = ticket_in(tap.what);
    if (theirs == nullptr || *theirs != *ticket || tap.id == draft.target) continue;
    draft.along.push_back({tap.id, tap.at, tap.what});
  }
}

}  // namespace rb::screens
