// What a book kept of a pour and cannot give as an event: damaged, or of a kind this program does
// not know. Told beside the pour wherever it is shown, so that nothing lost goes unseen.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/ids.h"

namespace rb {

struct UnreadEvent {
  EventId id;
  std::string what;  ///< a plain sentence
  bool operator==(const UnreadEvent&) const = default;
};

struct Unread {
  std::vector<UnreadEvent> damaged;    ///< kept once, no longer whole
  std::vector<UnreadEvent> set_aside;  ///< whole, of a kind a newer program wrote
  [[nodiscard]] bool empty() const { return damaged.empty() && set_aside.empty(); }
  bool operator==(const Unread&) const = default;
};

/// A pour that cannot be folded since the event that opens it is damaged, and its plan with it.
struct PourWithoutPlan {
  PourId pour;
  std::size_t events = 0;  ///< of it that are whole
  Unread unread;
  bool operator==(const PourWithoutPlan&) const = default;
};

}  // namespace rb
