#include "pour/log/places.h"

#include <algorithm>

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
