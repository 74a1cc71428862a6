#include "pour/log/fold_happening.h"

#include <algorithm>

#include "pour/log/log_entry.h"
#include "pour/log/may_happen.h"
#include "pour/log/places.h"

namespace rb {

namespace {

// A tap counts as live when it was entered within this of when it says it happened.
constexpr Seconds kLiveTap{1};

// Puts what happened into the state. What may not be was refused before (may_happen.h).
class Apply : public ApplyReview {
 public:
  using ApplyReview::ApplyReview;
  using ApplyReview::operator();

  void operator()(const event::PourOpen&) {}
  void operator()(const event::Ready& e) { add(state_.ready, List::ready, {ref_, at_, e}); }

  void operator()(const event::Hang& e) {
    const auto [element, row] = place(e.place);
    const Row& planned = state_.plan->elements[element].rows[row];
    end_hang(element, row);
    state_.elements[element].rows[row].hangs.push_back(state_.hangs.size());
    state_.hangs.push_back(
        {ref_, element, row, at_, std::nullopt, places_filled(planned, e.motors), e.cables});
    note(changed::HangBegan{});
  }
  void operator()(const event::TakeDown& e) {
    const auto [element, row] = place(e.place);
    if (RunState* run = open_run(element, row)) {
      run->to = at_;  // motors off the form cannot run
      note(changed::RunEnded{index_in(state_.runs, run)});
    }
    take_off(element, row);
  }

  void operator()(const event::LiftStart& e) {
    const std::size_t element = *element_index(*state_.plan, e.element);
    ElementState& there = state_.elements[element];
    LiftState lift{.ref = ref_, .lift = e.lift, .started = at_, .last_reading = at_};
    for (auto& top : there.tops) {
      top.stand(at_);
      lift.bottom.push_back(top.standing());
    }
    lift.top = lift.bottom;
    lift.bay_ended.assign(there.tops.size(), false);
    lift.bays.resize(there.tops.size());
    if (!there.lifts.empty()) there.lifts.back().next_start = at_;
    there.lifts.push_back(std::move(lift));
    note(changed::LiftBegan{element});
  }
  void operator()(const event::BayStart& e) {
    const std::size_t element = *element_index(*state_.plan, e.element);
    const std::size_t index = *latest_lift(state_.elements[element], e.lift);
    const auto bay = static_cast<std::size_t>(e.bay) - 1;
    keep_lift(element, index);
    LiftState& lift = state_.elements[element].lifts[index];
    lift.bay_wise = true;
    state_.elements[element].tops[bay].stand(at_);
    lift.bays[bay].started = at_;
    note(changed::BayBegan{element, index, bay});
  }
  void operator()(const event::Top& e) {
    const std::size_t element = *element_index(*state_.plan, e.element);
    auto& lifts = state_.elements[element].lifts;
    const auto [from, to] = bay_range(state_.plan->elements[element], e.bay);
    if (!lifts.empty()) {
      keep_lift(element, lifts.size() - 1);
      if (e.bay) lifts.back().bay_wise = true;
    }
    for (std::size_t bay = from; bay < to; ++bay) {
      read_top(element, bay, e.height);
      if (lifts.empty()) continue;
      // Concrete topped up after the lift's end still belongs to it: no part goes unjudged.
      LiftState& lift = lifts.back();
      const Length standing = state_.elements[element].tops[bay].standing();
      const bool placed = !lift.bay_ended[bay] || standing > lift.top[bay];
      if (placed) lift.last_reading = at_;
      read_lift(element, lifts.size() - 1, bay, lift.bay_ended[bay], placed);
    }
  }
  void operator()(const event::LiftEnd& e) {
    const std::size_t element = *element_index(*state_.plan, e.element);
    const std::size_t index = *latest_lift(state_.elements[element], e.lift);
    keep_lift(element, index);
    const auto [from, to] = bay_range(state_.plan->elements[element], e.bay);
    for (std::size_t bay = from; bay < to; ++bay) {
      read_top(element, bay, e.height);
      read_lift(element, index, bay, true, true);
    }
    LiftState& lift = state_.elements[element].lifts[index];
    if (e.bay) lift.bay_wise = true;
    lift.last_reading = at_;
    lift.ended = at_;
  }

  void operator()(const event::Run& e) {
    const auto [element, row] = place(e.place);
    // One of which a trip had stopped some motors: they start again with the rest.
    if (RunState* run = open_run(element, row)) end_run(*run);
    const HangState* hung = state_.hanging(element, row);
    state_.elements[element].rows[row].runs.push_back(state_.runs.size());
    RunState run{.ref = ref_,
                 .rest = std::nullopt,
                 .element = element,
                 .row = row,
                 .from = at_,
                 .to = std::nullopt,
                 .cables = hung != nullptr && hung->cables};
    const auto speed = e.speed ? e.speed : set_speed(element, row);
    if (speed) run.speeds.push_back({at_, *speed});
    state_.runs.push_back(std::move(run));
    note(changed::RunBegan{});
  }
  void operator()(const event::Speed& e) {
    const std::size_t inverter = *inverter_index(*state_.plan, e.inverter);
    add(state_.speeds, List::speeds, {ref_, at_, inverter, e});
    for_runs_fed(inverter, [&](RunState& run) {
      note(changed::SpeedNamed{index_in(state_.runs, &run)});
      run.speeds.push_back({at_, *set_speed(run.element, run.row)});
    });
  }
  void operator()(const event::Trip& e) {
    const std::size_t inverter = *inverter_index(*state_.plan, e.inverter);
    add(state_.trips, List::trips, {ref_, at_, inverter});
    for_runs_fed(inverter, [&](RunState& run) {
      note(changed::RunTripped{index_in(state_.runs, &run)});
      run.trips.push_back({at_, inverter});
      if (none_left(run)) end_run(run);
    });
  }
  void operator()(const event::Rest& e) {
    const auto [element, row] = place(e.place);
    RunState* run = open_run(element, row);
    run->to = run->from + run_length(*run);
    run->rest = ref_;
    at_ = std::max(at_, *run->to);
    note(changed::RunEnded{index_in(state_.runs, run)});
  }
  void operator()(const event::Insert& e) {
    const std::size_t element = *element_index(*state_.plan, e.element);
    add(state_.inserts, List::inserts, {ref_, at_, element, index_of(e.bay), e});
  }

  void operator()(const event::Truck& e) {
    const std::size_t index = ticket(e.ticket);
    state_.trucks[index].ref = ref_;
    state_.trucks[index].what = e;
    note(changed::TruckEntered{index});
  }
  void operator()(const event::Discharge& e) {
    const auto ended = discharge_ended(state_, entry_, e);
    const std::size_t index = ticket(e.ticket);
    auto& parts = state_.trucks[index].parts;
    if (const auto open = part_ended(state_, state_.trucks[index], e)) {
      PartState& part = parts[*open];
      note(changed::DischargeEnded{index, *open, part.volume});
      part.to = ended;
      if (e.volume) part.volume = e.volume;
    } else {
      std::optional<std::size_t> element;
      if (e.element) element = element_index(*state_.plan, *e.element);
      parts.push_back({ref_, at_, ended, element, e.volume});
      note(changed::Discharged{index});
    }
    if (ended) at_ = *ended;
  }
  void operator()(const event::Test& e) { add(state_.tests, List::tests, {ref_, at_, e}); }
  void operator()(const event::AirTemp& e) {
    add(state_.air, List::air, {at_, e.temp});
    if (e.humidity || e.wind) add(state_.weather, List::weather, {ref_, at_, e});
  }

  void operator()(const event::Hold& e) {
    add(state_.holds, List::holds, {ref_, at_, std::nullopt, e.reason, {}, e.chosen});
  }
  void operator()(const event::Moved& e) {
    add(state_.moved, List::moved, {ref_, at_, *element_index(*state_.plan, e.element), e});
    if (!state_.holds.empty() && !state_.holds.back().to) return;
    add(state_.holds, List::holds, {ref_, at_, std::nullopt, {}, e.thing});
  }
  void operator()(const event::Joint& e) {
    add(state_.joints, List::joints,
        {ref_, at_, *element_index(*state_.plan, e.element), index_of(e.bay), e});
  }
  void operator()(const event::Override& e) {
    OverrideState passed{ref_, at_, std::nullopt, std::nullopt, e};
    if (e.element) passed.element = element_index(*state_.plan, *e.element);
    if (e.element && e.row) {
      passed.row = place({*e.element, e.side.value_or(Side::near_side), *e.row}).second;
    }
    add(state_.overrides, List::overrides, std::move(passed));
  }
  void operator()(const event::Resume&) {
    state_.holds.back().to = at_;
    note(changed::HoldEnded{});
  }
  void operator()(const event::Note&) { add(state_.notes, List::notes, EventRef{ref_}); }
  void operator()(const event::Fix&) {}
  void operator()(const event::Strike&) {}
  void operator()(const event::PourClose&) {
    state_.closed = entry_.when;
    note(changed::Closed{});
  }
  void operator()(const event::Sign&) { add(state_.signs, List::signs, EventRef{ref_}); }
  void operator()(const event::Strip&) { add(state_.strips, List::strips, EventRef{ref_}); }
  void operator()(const event::Blemish&) { add(state_.blemishes, List::blemishes, EventRef{ref_}); }
  void operator()(const event::Repair&) { add(state_.repairs, List::repairs, EventRef{ref_}); }
  void operator()(const event::Penetration& e) {
    add(state_.penetrations, List::penetrations, {ref_, at_, e});
  }

  void operator()(const event::CureStart& e) {
    add(state_.cures, List::cures, {ref_, at_, std::nullopt, *element_of(e), e.how});
  }
  void operator()(const event::CureEnd& e) {
    auto* cure = const_cast<CureState*>(state_.curing(*element_of(e)));
    cure->to = at_;
    note(changed::CureEnded{index_in(state_.cures, cure)});
  }
  void operator()(const event::ConcreteTemp& e) {
    add(state_.concrete_temps, List::concrete_temps, {ref_, at_, *element_of(e), e});
  }
  void operator()(const event::PermitStrip& e) {
    add(state_.permits, List::permits, {ref_, at_, *element_of(e), e});
  }
  void operator()(const event::Specimen& e) {
    add(state_.specimens, List::specimens, {ref_, at_, *ticket_of(state_, e.specimen), e});
  }

  // Of what repeats one thing is taken in: the speeds a row ran at.
  void repeated() {
    const auto* again = std::get_if<event::Run>(&entry_.event.what);
    if (again == nullptr || !again->speed) return;
    const auto [element, row] = place(again->place);
    RunState* run = open_run(element, row);
    note(changed::SpeedNamed{index_in(state_.runs, run)});
    run->speeds.push_back({at_, *again->speed});
  }

 private:
  // Before a lift is read.
  void keep_lift(std::size_t element, std::size_t index) {
    const LiftState& lift = state_.elements[element].lifts[index];
    note(changed::LiftRead{element, index, lift.last_reading, lift.ended, lift.bay_wise});
  }
  void read_top(std::size_t element, std::size_t bay, Length height) {
    trade::TopCurve& top = state_.elements[element].tops[bay];
    note(changed::TopRead{element, bay, top.points().size()});
    state_.readings.push_back({ref_, at_, element, bay, height, top.standing()});
    top.read(at_, height);
  }
  void read_lift(std::size_t element, std::size_t index, std::size_t bay, bool ended, bool placed) {
    LiftState& lift = state_.elements[element].lifts[index];
    note(changed::LiftTopRead{element, index, bay, lift.top[bay], lift.bay_ended[bay],
                              lift.bays[bay].read});
    if (placed) lift.bays[bay].read = at_;
    lift.top[bay] = state_.elements[element].tops[bay].standing();
    lift.bay_ended[bay] = ended;
  }
  template <class Visit>
  void for_runs_fed(std::size_t inverter, Visit visit) {
    if (state_.closed) return;  // it ended what ran
    for (std::size_t e = 0; e < state_.elements.size(); ++e) {
      for (std::size_t r = 0; r < state_.elements[e].rows.size(); ++r) {
        RunState* run = open_run(e, r);
        if (run == nullptr) continue;
        const auto& motors = state_.plan->elements[e].rows[r].motors;
        if (std::any_of(motors.begin(), motors.end(), [&](const Motor& motor) {
              return feeds(state_.plan->power[inverter], motor.id);
            })) {
          visit(*run);
        }
      }
    }
  }
  // What the inverters that feed a row are set to, of several the least; none: nobody said.
  [[nodiscard]] std::optional<Frequency> set_speed(std::size_t element, std::size_t row) const {
    const auto& motors = state_.plan->elements[element].rows[row].motors;
    std::optional<Frequency> least;
    for (std::size_t i = 0; i < state_.plan->power.size(); ++i) {
      const auto set = std::find_if(state_.speeds.rbegin(), state_.speeds.rend(),
                                    [&](const SpeedState& speed) { return speed.inverter == i; });
      if (set == state_.speeds.rend()) continue;
      if (std::any_of(motors.begin(), motors.end(),
                      [&](const Motor& motor) { return feeds(state_.plan->power[i], motor.id); })) {
        least = std::min(least.value_or(set->what.speed), set->what.speed);
      }
    }
    return least;
  }
  static std::optional<std::size_t> index_of(std::optional<int> bay) {
    return bay ? std::optional{static_cast<std::size_t>(*bay) - 1} : std::nullopt;
  }
  std::size_t ticket(const TicketId& id) {
    if (const auto known = truck_of(state_, id)) return *known;
    state_.memory.tickets.emplace(id.text, state_.trucks.size());
    state_.trucks.push_back({.ticket = id});
    note(changed::TruckCame{});
    return state_.trucks.size() - 1;
  }
  // Both ends tapped live in one start of the tablet: the steady clock tells the length.
  [[nodiscard]] Seconds run_length(const RunState& run) const {
    const Event& began = state_.log[run.ref].event;
    const Event& ended = entry_.event;
    const auto live = [](const Event& e) {
      return e.entry && std::chrono::abs(between(e.at, e.entry->wall)) < kLiveTap;
    };
    if (live(began) && live(ended) && began.entry->boot == ended.entry->boot) {
      return ended.entry->steady - began.entry->steady;
    }
    return at_ - run.from;
  }
};

}  // namespace

void apply_happening(PourState& state, EventRef ref) {
  LogEntry& entry = state.log[ref];
  Apply apply{state, ref};
  if (auto no = refused(state, entry, ref)) {
    entry.sense = no->sense;
    entry.why_not = std::move(no->why);
    if (no->sense == LogEntry::Sense::repeats) apply.repeated();
    return;
  }
  std::visit(apply, entry.event.what);
  state.last = std::max(state.last, apply.at());
}

}  // namespace rb
