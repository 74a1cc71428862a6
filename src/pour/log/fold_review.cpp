// What reviewing, signing and amending put into the state, and what a motor out of work takes from
// it.
#include <algorithm>

#include "pour/log/fold_happening.h"
#include "pour/plan/amend.h"

namespace rb {

void Applying::begin_hang(HangState hang) {
  state_.elements[hang.element].rows[hang.row].hangs.push_back(state_.hangs.size());
  state_.hangs.push_back(std::move(hang));
  note(changed::HangBegan{});
}

void Applying::end_hang(std::size_t element, std::size_t row) {
  HangState* hung = open_hang(element, row);
  if (hung == nullptr) return;
  hung->to = at_;
  note(changed::HangEnded{index_in(state_.hangs, hung)});
}

HangState* Applying::open_hang(std::size_t element, std::size_t row) {
  const auto& all = state_.elements[element].rows[row].hangs;
  return all.empty() || state_.hangs[all.back()].to ? nullptr : &state_.hangs[all.back()];
}

void Applying::take_off(std::size_t element, std::size_t row) {
  const HangState* last = open_hang(element, row);
  if (last == nullptr) return;
  std::optional<HangState> left;
  if (last->out) {
    left = HangState{.ref = *last->out,
                     .element = element,
                     .row = row,
                     .from = at_,
                     .to = std::nullopt,
                     .places = {},
                     .cables = false,
                     .out = last->out};
    left->places = places_at_work(state_, element, row);
  }
  end_hang(element, row);
  if (left) begin_hang(std::move(*left));
}

void Applying::end_run(RunState& run) {
  run.to = at_;
  run.rest = ref_;
  note(changed::RunEnded{index_in(state_.runs, &run)});
}

bool Applying::none_left(const RunState& run) const {
  const auto& motors = state_.plan->elements[run.element].rows[run.row].motors;
  const auto& all = state_.elements[run.element].rows[run.row].hangs;
  const bool hangs = !all.empty() && !state_.hangs[all.back()].to;
  const HangState* hung = hangs ? &state_.hangs[all.back()] : nullptr;
  for (std::size_t m = 0; m < motors.size(); ++m) {
    if (hung != nullptr && !hung->places[m]) continue;
    if (std::none_of(run.trips.begin(), run.trips.end(), [&](const RunTrip& trip) {
          return feeds(state_.plan->power[trip.inverter], motors[m].id);
        })) {
      return false;
    }
  }
  return true;
}

void ApplyReview::operator()(const event::Accept& e) {
  add(state_.reviews, List::reviews, {ref_, at_, true, e.finding, e.figures, e.note});
}
void ApplyReview::operator()(const event::SendBack& e) {
  add(state_.reviews, List::reviews, {ref_, at_, false, e.finding, e.figures, e.reason});
}

// A hang goes on from here, a place poorer: what shakes, draws and loads goes by it.
void ApplyReview::operator()(const event::MotorOut& e) {
  MotorOutState out{ref_, at_, places_of(state_, e), e};
  for (const MotorOutState::Place& at : out.places) {
    const HangState* hung = open_hang(at.element, at.row);
    HangState poorer{.ref = hung != nullptr && hung->stands() ? hung->ref : ref_,
                     .element = at.element,
                     .row = at.row,
                     .from = at_,
                     .to = std::nullopt,
                     .places = {},
                     .cables = hung != nullptr && hung->cables,
                     .out = ref_};
    poorer.places = hung != nullptr ? hung->places : places_at_work(state_, at.element, at.row);
    poorer.places[at.place] = false;
    end_hang(at.element, at.row);
    begin_hang(std::move(poorer));
    RunState* run = open_run(at.element, at.row);
    if (run != nullptr && !state_.closed && none_left(*run)) end_run(*run);
  }
  add(state_.motors_out, List::motors_out, std::move(out));
}

void ApplyReview::operator()(const event::Reinspect& /*e*/) {
  add(state_.reinspections, List::reinspections, EventRef{ref_});
}
void ApplyReview::operator()(const event::Photo& /*e*/) {
  add(state_.photos, List::photos, EventRef{ref_});
}

void ApplyReview::operator()(const event::Amend& e) {
  auto plan = amended(*state_.plan, e.path, e.value, Bounds::as_it_is);
  if (!plan) return;  // refused before it came here
  changed::Amended change{state_.plan, plan->row_added_to};
  if (plan->row_added_to) state_.elements[*plan->row_added_to].rows.emplace_back();
  state_.amends.push_back({ref_, at_, std::move(plan->was), e});
  state_.plan = std::make_shared<const Plan>(std::move(plan->plan));
  note(std::move(change));
}

void ApplyReview::operator()(const event::Enrol& e) {
  add(state_.enrolments, List::enrolments, {ref_, at_, e});
}
void ApplyReview::operator()(const event::Inspect& /*e*/) {
  add(state_.inspections, List::inspections, EventRef{ref_});
}

}  // namespace rb
