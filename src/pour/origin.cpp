#include "pour/origin.h"

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

}  // namespace

bool brought_in(const PourState& state, EventRef event) {
  return brought(state.log[event].event.entry, replayed_at(state));
}

Origin origin_of(const PourState& state) {
  const auto replayed = replayed_at(state);
  Origin origin;
  for (const LogEntry& entry : state.log) {
    if (!entry.event.entry) continue;
    ++(brought(entry.event.entry, replayed) ? origin.brought : origin.tapped);
  }
  return origin;
}

}  // namespace rb
