// The events of a pour as its rows give them, each row judged by its own hash.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

#include "store/book/logbook.h"

namespace rb::store {

/// `rows` selects kRowColumns in order of seq. Throws SQLite::Exception.
PourRead read_rows(SQLite::Statement& rows, const SQLite::Database& json, const std::string& where);

/// The `do` of a line, when it is a kind this program does not know.
std::optional<std::string> unknown_kind(const std::string& line, const SQLite::Database& json);

}  // namespace rb::store
