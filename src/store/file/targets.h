// The event another event speaks of: the target of a fix, a strike, a repair, a photo.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>
#include <optional>

#include "base/result.h"
#include "pour/log/event.h"

namespace rb::store {

/// The id in the book of an event that came before, or none.
using Resolve = std::function<std::optional<EventId>(const EventId&)>;

/// Points an event's target, and one that a fix puts in, at the book's ids. Fails (kind input) for
/// a target that no event before it has. `json` is any connection: it edits the fields of a fix.
Result<void> point_targets(Happening& what, const Resolve& resolve, const SQLite::Database& json);

}  // namespace rb::store
