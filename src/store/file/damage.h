// What is wrong with a damaged book, event by event.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/ids.h"

namespace rb {

/// An event the book kept and no longer has whole.
struct DamagedEvent {
  std::int64_t number = 0;
  EventId id;
  std::optional<PourId> pour;  ///< none where that cannot be read either
  bool missing = true;         ///< nothing of it reads; else what reads does not fit its hash
  bool operator==(const DamagedEvent&) const = default;
};

/// Of a whole book.
struct Damage {
  std::string why;                   ///< how it was noticed, a plain sentence; empty: no damage
  std::vector<DamagedEvent> events;  ///< in order of their numbers; may be none though damaged
  std::size_t whole = 0;             ///< events that are whole
  std::int64_t last = 0;             ///< the last number known to have been kept
  bool name_lost = false;            ///< the book's own row cannot be read
  [[nodiscard]] bool any() const { return !why.empty(); }
};

/// Those of one pour, and those whose pour is not known that lie among its events.
std::vector<DamagedEvent> damage_of(const Damage& damage, const PourId& pour,
                                    std::int64_t first_whole, std::int64_t last_whole);

/// What is to be told of a damaged event beside its id.
std::string what_of(const DamagedEvent& event);

/// "N1-5, N1-7 to N1-9": the ids of events in order, neighbours drawn together.
std::string ids_text(const std::vector<DamagedEvent>& events);

}  // namespace rb
