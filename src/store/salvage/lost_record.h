// What a rescue recorded in a book as lost, so that its chain is held together over the gaps.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "store/file/damage.h"
#include "store/file/keeping.h"

namespace rb::store {

/// The hash of each number recorded as lost, where what came after told it; 0 is the book's name.
using Lost = std::map<std::int64_t, std::optional<Hash>>;

/// Throws SQLite::Exception.
Lost lost_in(const SQLite::Database& database);
std::vector<DamagedEvent> lost_events(const SQLite::Database& database, const std::string& tag);

/// `at` moved over the numbers recorded as lost that follow it: what the next event must follow.
Head over_lost(const Lost& lost, Head at);
/// What the first event must follow.
Head start_of(const Lost& lost, const BookName& name);

}  // namespace rb::store
