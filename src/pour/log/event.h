// What happened on the form, one value an event. Kinds and fields are those of the pour script
// (format version 1). A kind is told once, in one of the kinds_*.h: its word in a script, its
// fields (field.h), what is said of it, and its place in the list at the end; fold_happening.cpp
// says what it does.
#pragma once

#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

#include "base/ids.h"
#include "base/moment.h"
#include "pour/log/kinds_concrete.h"
#include "pour/log/kinds_paper.h"
#include "pour/log/kinds_placing.h"

namespace rb {

namespace event {

template <class Tuple>
struct OneOf;
template <class... Kinds>
struct OneOf<std::tuple<Kinds...>> {
  using Type = std::variant<Kinds...>;
};
using AllKinds = decltype(std::tuple_cat(
    std::declval<PlacingKinds>(), std::declval<ConcreteKinds>(), std::declval<PaperKinds>()));

}  // namespace event

using Happening = event::OneOf<event::AllKinds>::Type;

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
  EventId id;   ///< the book's; on a script line not yet in a book, the line's own or empty
  Moment at{};  ///< when it happened
  PersonId by;
  Happening what;
  std::string extra;  ///< fields this version does not know, kept as a JSON object's text
  std::optional<Entry> entry;
  Seconds uncertain{};  ///< by how much `at` may be off: the tablet stood still as it was tapped
  bool operator==(const Event&) const = default;
};

/// The word of an event's kind in a pour script ("lift-start").
const char* kind_text(const Happening& what);
/// Whether a script's `do` names a kind this program knows; books of a newer program may hold
/// others.
bool is_kind(std::string_view word);
/// Every kind's word, in the order of Happening.
const std::vector<std::string>& kind_words();

/// An event entered more than this after it happened is shown as entered late.
inline constexpr Seconds kLateEntry{120};

}  // namespace rb
