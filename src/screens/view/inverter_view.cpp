#include "screens/view/inverter_view.h"

#include <algorithm>

namespace rb::screens {

namespace {

// The motors of a run that an inverter feeds, that hang, and that no trip has stopped.
std::size_t turning(const PourState& state, const RunState& run, std::size_t inverter) {
  const bool tripped = std::any_of(run.trips.begin(), run.trips.end(),
                                   [&](const RunTrip& trip) { return trip.inverter == inverter; });
  if (tripped) return 0;
  const HangState* hung = state.hanging(run.element, run.row);
  const auto& motors = state.row_of(run).motors;
  std::size_t count = 0;
  for (std::size_t m = 0; m < motors.size(); ++m) {
    if (hung != nullptr && !hung->places[m]) continue;
    if (feeds(state.plan->power[inverter], motors[m].id)) ++count;
  }
  return count;
}

}  // namespace

std::vector<Frequency> last_speeds(const PourState& state, std::size_t most) {
  std::vector<Frequency> last;
  const auto add = [&](Frequency speed) {
    const bool known = std::find(last.begin(), last.end(), speed) != last.end();
    if (!known && last.size() < most) last.push_back(speed);
  };
  for (auto set = state.speeds.rbegin(); set != state.speeds.rend(); ++set) add(set->what.speed);
  if (const auto& type = state.plan->motor_type) {
    add(type->top_speed);
    add(type->working());
  }
  return last;
}

std::vector<InverterView> make_inverter_views(const PourState& state) {
  std::vector<InverterView> views;
  views.reserve(state.plan->power.size());
  for (const Inverter& inverter : state.plan->power) {
    views.push_back({.inverter = inverter.id, .gives = inverter.max_amps});
  }
  for (const SpeedState& set : state.speeds) views[set.inverter].speed = set.what.speed;
  for (const TripState& trip : state.trips) views[trip.inverter].tripped = state.moment(trip.at);
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    for (std::size_t r = 0; r < state.elements[e].rows.size(); ++r) {
      const RunState* run = state.running(e, r);
      if (run == nullptr) continue;
      for (std::size_t i = 0; i < views.size(); ++i) views[i].motors_on += turning(state, *run, i);
    }
  }
  for (std::size_t i = 0; i < views.size(); ++i) {
    InverterView& view = views[i];
    if (view.motors_on == 0) continue;
    view.tripped.reset();
    if (!state.plan->motor_type) continue;
    view.drawn = state.plan->motor_type->amps * static_cast<double>(view.motors_on);
    if (const auto& internal = state.plan->power[i].internal) {
      *view.drawn += internal->amps * static_cast<double>(internal->heads);
    }
  }
  return views;
}

}  // namespace rb::screens
