// The way back: each change as fold_happening.cpp made it, undone.
#include "pour/log/fold_happening.h"

namespace rb {

namespace {

class Undo {
 public:
  explicit Undo(PourState& state) : state_(state) {}

  void operator()(const changed::Grew& was) {
    switch (was.list) {
      case changed::List::ready:
        return state_.ready.pop_back();
      case changed::List::inserts:
        return state_.inserts.pop_back();
      case changed::List::tests:
        return state_.tests.pop_back();
      case changed::List::penetrations:
        return state_.penetrations.pop_back();
      case changed::List::air:
        return state_.air.pop_back();
      case changed::List::holds:
        return state_.holds.pop_back();
      case changed::List::moved:
        return state_.moved.pop_back();
      case changed::List::joints:
        return state_.joints.pop_back();
      case changed::List::overrides:
        return state_.overrides.pop_back();
      case changed::List::notes:
        return state_.notes.pop_back();
      case changed::List::signs:
        return state_.signs.pop_back();
      case changed::List::strips:
        return state_.strips.pop_back();
      case changed::List::blemishes:
        return state_.blemishes.pop_back();
      case changed::List::repairs:
        return state_.repairs.pop_back();
      case changed::List::speeds:
        return state_.speeds.pop_back();
      case changed::List::trips:
        return state_.trips.pop_back();
      case changed::List::weather:
        return state_.weather.pop_back();
      case changed::List::cures:
        return state_.cures.pop_back();
      case changed::List::concrete_temps:
        return state_.concrete_temps.pop_back();
      case changed::List::permits:
        return state_.permits.pop_back();
      case changed::List::specimens:
        return state_.specimens.pop_back();
      case changed::List::reinspections:
        return state_.reinspections.pop_back();
      case changed::List::photos:
        return state_.photos.pop_back();
      case changed::List::motors_out:
        return state_.motors_out.pop_back();
      case changed::List::reviews:
        return state_.reviews.pop_back();
      case changed::List::enrolments:
        return state_.enrolments.pop_back();
      case changed::List::inspections:
        return state_.inspections.pop_back();
    }
  }
  void operator()(const changed::HangBegan&) {
    const HangState& hang = state_.hangs.back();
    state_.elements[hang.element].rows[hang.row].hangs.pop_back();
    state_.hangs.pop_back();
  }
  void operator()(const changed::HangEnded& was) { state_.hangs[was.hang].to.reset(); }
  void operator()(const changed::RunBegan&) {
    const RunState& run = state_.runs.back();
    state_.elements[run.element].rows[run.row].runs.pop_back();
    state_.runs.pop_back();
  }
  void operator()(const changed::RunEnded& was) {
    state_.runs[was.run].to.reset();
    state_.runs[was.run].rest.reset();
  }
  void operator()(const changed::SpeedNamed& was) { state_.runs[was.run].speeds.pop_back(); }
  void operator()(const changed::RunTripped& was) { state_.runs[was.run].trips.pop_back(); }
  void operator()(const changed::LiftBegan& was) {
    ElementState& there = state_.elements[was.element];
    for (auto& top : there.tops) top.take_back(top.points().size() - 1);
    there.lifts.pop_back();
    if (!there.lifts.empty()) there.lifts.back().next_start.reset();
  }
  void operator()(const changed::LiftRead& was) {
    LiftState& lift = state_.elements[was.element].lifts[was.lift];
    lift.last_reading = was.last_reading;
    lift.ended = was.ended;
    lift.bay_wise = was.bay_wise;
  }
  void operator()(const changed::BayBegan& was) {
    ElementState& there = state_.elements[was.element];
    there.tops[was.bay].take_back(there.tops[was.bay].points().size() - 1);
    there.lifts[was.lift].bays[was.bay].started.reset();
  }
  void operator()(const changed::TopRead& was) {
    state_.elements[was.element].tops[was.bay].take_back(was.points);
    state_.readings.pop_back();
  }
  void operator()(const changed::LiftTopRead& was) {
    LiftState& lift = state_.elements[was.element].lifts[was.lift];
    lift.top[was.bay] = was.top;
    lift.bay_ended[was.bay] = was.ended;
    lift.bays[was.bay].read = was.read;
  }
  void operator()(const changed::TruckCame&) {
    state_.memory.tickets.erase(state_.trucks.back().ticket.text);
    state_.trucks.pop_back();
  }
  void operator()(const changed::TruckEntered& was) {
    state_.trucks[was.truck].ref.reset();
    state_.trucks[was.truck].what.reset();
  }
  void operator()(const changed::Discharged& was) { state_.trucks[was.truck].parts.pop_back(); }
  void operator()(const changed::DischargeEnded& was) {
    PartState& part = state_.trucks[was.truck].parts[was.part];
    part.to.reset();
    part.volume = was.volume;
  }
  void operator()(const changed::CureEnded& was) { state_.cures[was.cure].to.reset(); }
  void operator()(const changed::HoldEnded&) { state_.holds.back().to.reset(); }
  void operator()(const changed::Closed&) { state_.closed.reset(); }
  void operator()(const changed::Amended& was) {
    state_.plan = was.before;
    state_.amends.pop_back();
    if (was.grown) state_.elements[*was.grown].rows.pop_back();
  }

 private:
  PourState& state_;
};

}  // namespace

void take_back_changes(PourState& state, std::size_t changes, Seconds from) {
  Undo undo{state};
  while (state.memory.changes.size() > changes) {
    leave_trace(state, state.memory.changes.back(), from);
    std::visit(undo, state.memory.changes.back());
    state.memory.changes.pop_back();
  }
}

}  // namespace rb
