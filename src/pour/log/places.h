// Where in the plan an event happened. Inside this room.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "pour/log/event.h"
#include "pour/log/state.h"
#include "pour/plan/plan.h"

namespace rb {

/// Index into the plan's elements; none when it has no such element.
std::optional<std::size_t> element_index(const Plan& plan, const ElementId& id);
/// Index into the element's rows; none when it has no such row on that side.
std::optional<std::size_t> row_index(const Element& element, const RowPlace& place);

/// Index into the plan's power; none when it has no such inverter.
std::optional<std::size_t> inverter_index(const Plan& plan, const InverterId& id);

/// Both; none when the plan has no such row. Where the last runs were is looked first.
std::optional<std::pair<std::size_t, std::size_t>> row_at(const PourState& state,
                                                          const RowPlace& place);

/// Which places of a row hold a motor: those whose planned motor was hung, then, from the left, one
/// for each other motor (a spare takes the place of one that is missing). None named = all.
std::vector<bool> places_filled(const Row& row, const std::vector<MotorId>& motors);

/// Which of those places holds a motor; none where it was not hung there.
std::optional<std::size_t> place_of(const Row& row, const std::vector<MotorId>& hung,
                                    const MotorId& motor);
/// Where a motor hangs at the moment that was come to: by the last hang of each row, else, of a row
/// never logged as hung, by the plan. Of one element where it is told.
std::vector<MotorOutState::Place> places_of(const PourState& state, const event::MotorOut& out);

/// Which places of a row are not out of work since it was hung last.
std::vector<bool> places_at_work(const PourState& state, std::size_t element, std::size_t row);

/// The ticket whose test took a specimen; none: no test did so far.
std::optional<TicketId> ticket_of(const PourState& state, const SpecimenId& specimen);

/// Of an element's lifts the one of that number started last; none: it was not started.
std::optional<std::size_t> latest_lift(const ElementState& element, int number);

/// The bays an event tells of: the one named, from 1, else all.
struct BayRange {
  std::size_t from = 0, to = 0;
};
BayRange bay_range(const Element& element, std::optional<int> bay);

}  // namespace rb
