#include "screens/view/tap_filter.h"

#include <algorithm>

#include "pour/log/log_entry.h"

namespace rb::screens {

namespace {

// The place of the row that an event names; none: it names none.
std::optional<RowPlace> row_named(const Happening& what) {
  return std::visit(
      [](const auto& kind) -> std::optional<RowPlace> {
        if constexpr (requires { kind.place.row; }) {
          return kind.place;
        } else {
          return std::nullopt;
        }
      },
      what);
}

// The lift that an event names; none: it names none.
std::optional<int> lift_named(const Happening& what) {
  return std::visit(
      [](const auto& kind) -> std::optional<int> {
        if constexpr (requires { std::optional<int>{kind.lift}; }) {
          return kind.lift;
        } else {
          return std::nullopt;
        }
      },
      what);
}

// Whether a moment lies between the start of a lift of that number and the start of the next.
bool while_lift(const PourState& state, int number, Seconds at) {
  for (const ElementState& element : state.elements) {
    for (const LiftState& lift : element.lifts) {
      const bool of_it =
          lift.lift == number && at >= lift.started && (!lift.next_start || at < *lift.next_start);
      if (of_it) return true;
    }
  }
  return false;
}

}  // namespace

bool lets_through(const PourState& state, const TapFilter& filter, EventRef tap) {
  const LogEntry& entry = state.log[tap];
  if (filter.person && entry.event.by != *filter.person) return false;
  if (filter.late && !entry.late()) return false;
  if (filter.corrected && !entry.struck && !entry.as_entered) return false;
  if (filter.row) {
    const auto row = row_named(entry.event.what);
    if (!row || !(*row == *filter.row)) return false;
  }
  if (!filter.lift) return true;
  const auto named = lift_named(entry.event.what);
  return named ? *named == *filter.lift : while_lift(state, *filter.lift, state.clock(entry.when));
}

std::vector<EventRef> filtered_taps(const PourState& state, const TapFilter& filter) {
  std::vector<EventRef> refs;
  for (auto tap = state.taps.rbegin(); tap != state.taps.rend(); ++tap) {
    if (lets_through(state, filter, *tap)) refs.push_back(*tap);
  }
  return refs;
}

FilterChoices filter_choices(const PourState& state) {
  FilterChoices choices;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const Element& planned = state.plan->elements[e];
    for (std::size_t r = 0; r < planned.rows.size(); ++r) {
      const RowState& row = state.elements[e].rows[r];
      if (row.runs.empty() && row.hangs.empty()) continue;
      choices.rows.push_back({planned.id, planned.rows[r].side, planned.rows[r].id});
    }
    for (const LiftState& lift : state.elements[e].lifts) choices.lifts.push_back(lift.lift);
  }
  std::sort(choices.lifts.begin(), choices.lifts.end());
  choices.lifts.erase(std::unique(choices.lifts.begin(), choices.lifts.end()), choices.lifts.end());
  for (const EventRef ref : state.taps) {
    const PersonId& by = state.log[ref].event.by;
    if (std::find(choices.people.begin(), choices.people.end(), by) == choices.people.end()) {
      choices.people.push_back(by);
    }
  }
  return choices;
}

}  // namespace rb::screens
