#include "pour/log/places.h"

#include <algorithm>

#include "pour/log/log_entry.h"

namespace rb {

std::optional<std::size_t> element_index(const Plan& plan, const ElementId& id) {
  const Element* found = plan.find(id);
  if (found == nullptr) return std::nullopt;
  return static_cast<std::size_t>(found - plan.elements.data());
}

std::optional<std::size_t> row_index(const Element& element, const RowPlace& place) {
  const Row* found = element.find_row(place.row, place.side);
  if (found == nullptr) return std::nullopt;
  return static_cast<std::size_t>(found - element.rows.data());
}

std::optional<std::size_t> inverter_index(const Plan& plan, const InverterId& id) {
  const auto found = std::find_if(plan.power.begin(), plan.power.end(),
                                  [&](const Inverter& inverter) { return inverter.id == id; });
  if (found == plan.power.end()) return std::nullopt;
  return static_cast<std::size_t>(found - plan.power.begin());
}

std::optional<std::pair<std::size_t, std::size_t>> row_at(const PourState& state,
                                                          const RowPlace& place) {
  const auto& elements = state.plan->elements;
  constexpr std::size_t kLastRuns = 4;
  const std::size_t runs = state.runs.size();
  for (std::size_t i = 0; i < std::min(kLastRuns, runs); ++i) {
    const RunState& run = state.runs[runs - 1 - i];
    const Row& row = elements[run.element].rows[run.row];
    if (row.id == place.row && row.side == place.side &&
        elements[run.element].id == place.element) {
      return std::pair{run.element, run.row};
    }
  }
  const auto element = element_index(*state.plan, place.element);
  if (!element) return std::nullopt;
  const auto row = row_index(elements[*element], place);
  if (!row) return std::nullopt;
  return std::pair{*element, *row};
}

std::vector<bool> places_filled(const Row& row, const std::vector<MotorId>& motors) {
  if (motors.empty()) return std::vector<bool>(row.motors.size(), true);
  std::vector<bool> places(row.motors.size(), false);
  std::size_t spares = 0;
  for (const MotorId& motor : motors) {
    const auto planned = std::find_if(row.motors.begin(), row.motors.end(),
                                      [&](const Motor& m) { return m.id == motor; });
    if (planned == row.motors.end()) {
      ++spares;
    } else {
      places[static_cast<std::size_t>(planned - row.motors.begin())] = true;
    }
  }
  for (std::size_t i = 0; i < places.size() && spares > 0; ++i) {
    if (!places[i]) {
      places[i] = true;
      --spares;
    }
  }
  return places;
}

std::optional<std::size_t> place_of(const Row& row, const std::vector<MotorId>& hung,
                                    const MotorId& motor) {
  const auto planned = [&](const MotorId& id) -> std::optional<std::size_t> {
    for (std::size_t i = 0; i < row.motors.size(); ++i) {
      if (row.motors[i].id == id) return i;
    }
    return std::nullopt;
  };
  if (hung.empty()) return planned(motor);
  const auto at = std::find(hung.begin(), hung.end(), motor);
  if (at == hung.end()) return std::nullopt;
  if (const auto own = planned(motor)) return own;
  // A spare stands, from the left, where no planned motor was hung: places_filled().
  std::vector<bool> taken(row.motors.size(), false);
  std::size_t spares_before = 0;
  for (auto other = hung.begin(); other != hung.end(); ++other) {
    if (const auto own = planned(*other)) {
      taken[*own] = true;
    } else if (other < at) {
      ++spares_before;
    }
  }
  for (std::size_t i = 0; i < taken.size(); ++i) {
    if (!taken[i] && spares_before-- == 0) return i;
  }
  return std::nullopt;
}

std::vector<MotorOutState::Place> places_of(const PourState& state, const event::MotorOut& out) {
  std::vector<MotorOutState::Place> found;
  const auto& elements = state.plan->elements;
  for (std::size_t e = 0; e < elements.size(); ++e) {
    if (out.element && elements[e].id != *out.element) continue;
    for (std::size_t r = 0; r < elements[e].rows.size(); ++r) {
      const auto& hangs = state.elements[e].rows[r].hangs;
      const HangState* hung = hangs.empty() ? nullptr : &state.hangs[hangs.back()];
      const bool stood = std::any_of(hangs.begin(), hangs.end(),
                                     [&](std::size_t h) { return state.hangs[h].stands(); });
      const bool hangs_now = hung != nullptr && !hung->to && hung->stands();
      if (stood && !hangs_now) continue;  // taken down
      std::vector<MotorId> named;
      if (hangs_now) {
        const auto* hang = std::get_if<event::Hang>(&state.log[hung->ref].event.what);
        if (hang != nullptr) named = hang->motors;
      }
      const auto place = place_of(elements[e].rows[r], named, out.motor);
      if (place && (hung == nullptr || hung->places[*place])) found.push_back({e, r, *place});
    }
  }
  return found;
}

std::vector<bool> places_at_work(const PourState& state, std::size_t element, std::size_t row) {
  std::vector<bool> places(state.plan->elements[element].rows[row].motors.size(), true);
  Seconds since{-1e18};
  for (const std::size_t hang : state.elements[element].rows[row].hangs) {
    if (!state.hangs[hang].out) since = state.hangs[hang].from;
  }
  for (const MotorOutState& out : state.motors_out) {
    for (const MotorOutState::Place& at : out.places) {
      if (at.element == element && at.row == row && out.at >= since) places[at.place] = false;
    }
  }
  return places;
}

std::optional<TicketId> ticket_of(const PourState& state, const SpecimenId& specimen) {
  for (const TestState& test : state.tests) {
    const auto& taken = test.what.specimens;
    if (std::find(taken.begin(), taken.end(), specimen) != taken.end()) return test.what.ticket;
  }
  return std::nullopt;
}

std::optional<std::size_t> latest_lift(const ElementState& element, int number) {
  for (std::size_t i = element.lifts.size(); i-- > 0;) {
    if (element.lifts[i].lift == number) return i;
  }
  return std::nullopt;
}

BayRange bay_range(const Element& element, std::optional<int> bay) {
  if (!bay) return {0, element.bays.size()};
  const auto index = static_cast<std::size_t>(*bay) - 1;
  return {index, index + 1};
}

}  // namespace rb
