// How the events of a pour came into its book: tapped one by one, or brought in from a script.
#pragma once

#include <cstddef>

#include "pour/log/state.h"

namespace rb {

/// An event may wait for the disk this long between being entered and being kept before it is told
/// of (a choice of this project).
inline constexpr Seconds kLateKept{120};

/// Whether an event was brought in from a script: its line had no entry of its own, or the pour was
/// replayed from a script that told its entries, which shows in that the book took its opening long
/// after it was entered and this event in the same go.
bool brought_in(const PourState& state, EventRef event);

struct Origin {
  std::size_t brought = 0;  ///< events from a script
  std::size_t tapped = 0;   ///< all others
  [[nodiscard]] bool from_script() const { return brought > 0; }
  [[nodiscard]] bool mixed() const { return brought > 0 && tapped > 0; }
  bool operator==(const Origin&) const = default;
};

/// Events without an entry (a script not in a book) count as neither.
Origin origin_of(const PourState& state);

/// In order of entry, all events whose entry or keeping lies off the moment they tell of by more
/// than a few seconds or was told anew, and perhaps others: what came in as it happened is not
/// looked at again at every tap.
std::vector<EventRef> oddly_entered(const PourState& state);

/// The fold's: counts the event entered last, and takes its count back.
void take_count(PourState& state, EventRef event);
void take_count_back(PourState& state, EventRef event);

}  // namespace rb
