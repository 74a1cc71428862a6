#include "pour/log/origin.h"

#include <algorithm>

#include "pour/log/log_entry.h"

namespace rb {

namespace {

// When the book took the whole pour out of a script that told its entries; none when it did not.
std::optional<Moment> replayed_at(const PourState& state) {
  if (state.log.empty()) return std::nullopt;
  const auto& open = state.log.front().event.entry;
  if (!open || !open->kept || between(open->wall, *open->kept) <= kLateKept) return std::nullopt;
  return open->kept;
}

bool brought(const std::optional<Entry>& entry, const std::optional<Moment>& replayed) {
  return entry && (entry->boot == kScriptBoot || (replayed && entry->kept == replayed));
}

// Less than what any rule tells of.
constexpr Seconds kAtOnce{4};

bool odd(const Event& event) {
  if (!event.entry) return false;
  const Entry& entry = *event.entry;
  if (between(entry.wall, event.at) > kAtOnce) return true;
  if (!entry.kept) return false;
  const Seconds after = between(entry.wall, *entry.kept);
  return after > kLateKept || after < -kAtOnce;
}

}  // namespace

bool brought_in(const PourState& state, EventRef event) {
  return brought(state.log[event].event.entry, replayed_at(state));
}

Origin origin_of(const PourState& state) {
  return {state.memory.came.brought, state.memory.came.tapped};
}

std::vector<EventRef> oddly_entered(const PourState& state) {
  std::vector<EventRef> all = state.memory.came.odd;
  for (const Correction& correction : state.corrections) all.push_back(correction.target);
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

void take_count(PourState& state, EventRef event) {
  const Event& entered = state.log[event].event;
  if (!entered.entry) return;
  Came& came = state.memory.came;
  ++(brought_in(state, event) ? came.brought : came.tapped);
  if (odd(entered)) came.odd.push_back(event);
}

void take_count_back(PourState& state, EventRef event) {
  if (!state.log[event].event.entry) return;
  Came& came = state.memory.came;
  --(brought_in(state, event) ? came.brought : came.tapped);
  if (!came.odd.empty() && came.odd.back() == event) came.odd.pop_back();
}

}  // namespace rb
