// An event as it stands in a pour's log, after corrections.
#pragma once

#include <optional>

#include "base/saying.h"
#include "pour/log/event.h"
#include "pour/log/event_log.h"

namespace rb {

/// An event as it stands in the log, after corrections.
struct LogEntry {
  Event event;                        ///< as it now reads
  std::optional<Event> as_entered{};  ///< as it was first entered, when a fix has changed it
  bool struck = false;
  enum class Sense { counts, repeats, wrong };
  Sense sense = Sense::counts;  ///< repeats: says nothing new; wrong: cannot be, and is left out
  Saying why_not{};             ///< why it does not count
  Moment when{};                ///< when it happened, a step of the wall clock taken out
  [[nodiscard]] bool late() const;
  bool operator==(const LogEntry& other) const;  ///< ids aside
};

}  // namespace rb
