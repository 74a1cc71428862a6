#include "pour/log/state.h"

#include <algorithm>

namespace rb {

bool LogEntry::late() const {
  return event.entry && event.entry->boot != kScriptBoot &&
         between(event.at, event.entry->wall) > kLateEntry;
}

namespace {

// Ids are the book's own; two books that tell the same pour differ in them alone.
bool same_but_for_ids(const Happening& a, const Happening& b) {
  if (a.index() != b.index()) return false;
  if (const auto* fix = std::get_if<event::Fix>(&a)) {
    const auto& other = std::get<event::Fix>(b);
    return fix->set == other.set && fix->why == other.why;
  }
  if (const auto* strike = std::get_if<event::Strike>(&a)) {
    return strike->why == std::get<event::Strike>(b).why;
  }
  if (const auto* repair = std::get_if<event::Repair>(&a)) {
    return repair->note == std::get<event::Repair>(b).note;
  }
  return a == b;
}

}  // namespace

bool LogEntry::operator==(const LogEntry& other) const {
  return event.at == other.event.at && event.by == other.event.by &&
         same_but_for_ids(event.what, other.event.what) && event.extra == other.event.extra &&
         event.entry == other.event.entry && struck == other.struck &&
         as_entered.has_value() == other.as_entered.has_value() && sense == other.sense &&
         why_not == other.why_not && when == other.when;
}

bool PourState::operator==(const PourState& o) const {
  return pour == o.pour && *plan == *o.plan && zero == o.zero && closed == o.closed &&
         last == o.last && log == o.log && order == o.order && taps == o.taps &&
         corrections == o.corrections && elements == o.elements && readings == o.readings &&
         hangs == o.hangs && runs == o.runs && speeds == o.speeds && trips == o.trips &&
         inserts == o.inserts && trucks == o.trucks && tests == o.tests &&
         penetrations == o.penetrations && moved == o.moved && joints == o.joints &&
         overrides == o.overrides && air == o.air && holds == o.holds && ready == o.ready &&
         notes == o.notes && signs == o.signs && strips == o.strips && blemishes == o.blemishes &&
         repairs == o.repairs && clock_steps == o.clock_steps;
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
