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
  if (all.empty() || hangs[all.back()].to || !hangs[all.back()].stands()) return nullptr;
  return &hangs[all.back()];
}

const CureState* PourState::curing(std::size_t element) const {
  for (auto cure = cures.rbegin(); cure != cures.rend(); ++cure) {
    if (cure->element == element) return cure->to ? nullptr : &*cure;
  }
  return nullptr;
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

namespace {

const PartState* begun_last(const std::vector<PartState>& parts) {
  const PartState* last = nullptr;
  for (const PartState& part : parts) {
    if (last == nullptr || part.from >= last->from) last = &part;
  }
  return last;
}

// Of the parts that tell it; none where one of them, or every one, does not.
std::optional<Volume> told_volume(const std::vector<PartState>& parts) {
  if (parts.empty()) return std::nullopt;
  Volume sum;
  for (const PartState& part : parts) {
    if (!part.volume) return std::nullopt;
    sum += *part.volume;
  }
  return sum;
}

}  // namespace

std::optional<Seconds> TruckState::discharged() const {
  std::optional<Seconds> first;
  for (const PartState& part : parts) first = std::min(first.value_or(part.from), part.from);
  return first;
}

std::optional<Seconds> TruckState::ended() const {
  const PartState* last = begun_last(parts);
  return last == nullptr ? std::nullopt : last->to;
}

std::optional<std::size_t> TruckState::element() const {
  const PartState* last = begun_last(parts);
  return last == nullptr ? std::nullopt : last->element;
}

bool TruckState::may_be_in(std::size_t which) const {
  return std::any_of(parts.begin(), parts.end(),
                     [&](const PartState& part) { return part.may_be_in(which); });
}

std::optional<Volume> TruckState::left() const {
  const auto told = told_volume(parts);
  if (!told || !what) return std::nullopt;
  return std::max(Volume{}, what->volume - what->returned.value_or(Volume{}) - *told);
}

Volume TruckState::placed() const {
  if (parts.empty() || !what) return {};
  return told_volume(parts).value_or(what->volume - what->returned.value_or(Volume{}));
}

std::optional<std::size_t> truck_of(const PourState& state, const TicketId& ticket) {
  const auto found = state.memory.tickets.find(ticket.text);
  if (found == state.memory.tickets.end()) return std::nullopt;
  return found->second;
}

const EnrolState* enrolled(const PourState& state, const PersonId& person) {
  for (auto known = state.enrolments.rbegin(); known != state.enrolments.rend(); ++known) {
    if (known->what.person == person) return &*known;
  }
  return nullptr;
}

const Mix* mix_of(const PourState& state, const TicketId& ticket) {
  const auto truck = truck_of(state, ticket);
  if (!truck || !state.trucks[*truck].what) return nullptr;
  return state.plan->find(state.trucks[*truck].what->mix);
}

}  // namespace rb
