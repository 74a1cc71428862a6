// Events that wait and move up, because one before them is not taken: their ids change, and what
// they say of each other with them.
#pragma once

#include <unordered_map>

#include "pour/log/event.h"

namespace rb::store {

/// Whether an event names another by its id.
inline bool speaks_of_another(const Event& event) {
  return target_of(event.what) != nullptr;
}

class Renumber {
 public:
  /// This one is not there any more: what speaks of it will find no target.
  void gone(const EventId& id) { now_[id] = EventId{}; }

  /// Gives an event its new id and points its target where that has moved to. In order.
  void move(Event& event, EventId to) {
    now_[event.id] = to;
    event.id = std::move(to);
    if (EventId* target = target_of(event.what)) point(*target);
  }

 private:
  void point(EventId& target) const {
    if (const auto found = now_.find(target); found != now_.end()) target = found->second;
  }
  std::unordered_map<EventId, EventId> now_;
};

}  // namespace rb::store
