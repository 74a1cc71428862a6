// Whether a pour is found whole: the index by which its events are found, held against the events.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>

#include "base/ids.h"

namespace rb::store {

/// In a plain sentence, how the index does not tell of this pour's events what they tell of
/// themselves. Looks at the events between the pour's first and last (where they are not scattered
/// over very many of other pours) and at the index beside its ends: costs what the pour costs.
/// Throws SQLite::Exception.
std::optional<std::string> pour_index_fault(const SQLite::Database& database, const PourId& pour);

}  // namespace rb::store
