// An event: what happened (happening.h), when, by whom, and how it was entered. Kinds and fields
// are those of the pour script (format version 1).
#pragma once

#include <optional>
#include <string>

#include "base/ids.h"
#include "base/moment.h"
#include "pour/log/happening.h"

namespace rb {

/// When an event was entered, by the wall clock and by the clock that never steps.
struct Entry {
  Moment wall;
  Seconds steady{};  ///< since the tablet started
  std::string boot;  ///< which start of the tablet that was
  /// When the book took it; none for an event that came out of no book. The book's own word, told
  /// by no script: two entries that differ in it alone are the same.
  std::optional<Moment> kept{};
  bool operator==(const Entry& other) const {
    return wall == other.wall && steady == other.steady && boot == other.boot;
  }
};

/// Marks what came in by a script in one go: it was not tapped, so neither early nor late.
inline constexpr const char* kScriptBoot = "script";
inline Entry script_entry(Entry entry) {
  entry.boot = kScriptBoot;
  return entry;
}

struct Event {
  EventId id{};  ///< the book's; on a script line not yet in a book, the line's own or empty
  Moment at{};   ///< when it happened
  PersonId by{};
  Happening what{};
  std::string extra{};  ///< fields this version does not know, kept as a JSON object's text
  std::optional<Entry> entry{};
  Seconds uncertain{};  ///< by how much `at` may be off: the tablet stood still as it was tapped
  bool operator==(const Event&) const = default;
};

/// An event entered more than this after it happened is shown as entered late.
inline constexpr Seconds kLateEntry{120};

}  // namespace rb
