// Questions to the marks of a book (db/0002). All of them throw SQLite::Exception.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include "store/book/pour_marks.h"

namespace rb::store {

PourPage page_of_pours(const SQLite::Database& database, const PourQuery& query);
std::optional<PourMark> find_pour(const SQLite::Database& database, const PourId& pour);

/// In the order they came into the book.
std::vector<PourId> all_pours(const SQLite::Database& database);
/// The same, of those that may touch the span: a day more or less is looked at where the clocks may
/// have drifted.
std::vector<PourId> pours_in(const SQLite::Database& database, const MomentSpan& span);

/// In plain sentences, where the marks do not tell what the events do. Reads the whole book.
std::vector<std::string> mark_faults(const SQLite::Database& database);

}  // namespace rb::store
