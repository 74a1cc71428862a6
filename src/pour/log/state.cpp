#include "pour/log/state.h"

#include <algorithm>

#include "pour/log/log_entry.h"

namespace rb {

Seconds PourState::told(EventRef event, Moment moment) const {
  const LogEntry& entry = log[event];
  return clock(moment) - between(entry.when, entry.event.at);
}

bool LiftState::empty(std::size_t bay) const {
  return bay_wise && !bays[bay].started && top[bay] <= bottom[bay];
}

bool LiftState::start_missing(std::size_t bay) const {
  return bay_wise && bays.size() > 1 && !bays[bay].started && top[bay] > bottom[bay];
}

const RunState* PourState::running(std::size_t element, std::size_t row) const {
  const auto& all = elements[element].rows[row].runs;
  return all.empty() || runs[all.back()].to ? nullptr : &runs[all.back()];
}

std::optional<Frequency> RunState::fastest() const {
  std::optional<Frequency> most;
  for (const RunSpeed& s : speeds) most = std::max(most.value_or(s.speed), s.speed);
  return most;
}

std::optional<Frequency> RunState::slowest() const {
  std::optional<Frequency> least;
  for (const RunSpeed& s : speeds) least = std::min(least.value_or(s.speed), s.speed);
  return least;
}

const HangState* PourState::hanging(std::size_t element, std::size_t row) const {
  const auto& all = elements[element].rows[row].hangs;
  return all.empty() || hangs[all.back()].to ? nullptr : &hangs[all.back()];
}

const LiftState* PourState::placing(std::size_t element) const {
  const auto& lifts = elements[element].lifts;
  if (lifts.empty()) return nullptr;
  const LiftState& latest = lifts.back();
  for (const bool ended : latest.bay_ended) {
    if (!ended) return &latest;
  }
  return nullptr;
}

std::optional<std::size_t> truck_of(const PourState& state, const TicketId& ticket) {
  const auto found = state.memory.tickets.find(ticket.text);
  if (found == state.memory.tickets.end()) return std::nullopt;
  return found->second;
}

const Mix* mix_of(const PourState& state, const TicketId& ticket) {
  const auto truck = truck_of(state, ticket);
  if (!truck || !state.trucks[*truck].what) return nullptr;
  return state.plan->find(state.trucks[*truck].what->mix);
}

}  // namespace rb
