// A book of an older schema: copied before it is brought up to date, or read without a trace.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <memory>

#include "base/result.h"

namespace rb::store {

/// Brings the book at `path`, of schema `from` and open for writing in `database`, up to date in
/// one transaction. A copy of it as it was stands beside it first, synced: BOOK.before-2, with a
/// number behind where something stands already (nothing is ever written over). When this fails or
/// is interrupted, the old book stands as it was. Throws SQLite::Exception.
Result<void> bring_up_to_date(SQLite::Database& database, const std::filesystem::path& path,
                              int from);

/// The same book in memory, brought up to date there: what is read of an older book that is not to
/// be written to. Takes as much memory as the book is long. Throws SQLite::Exception.
std::unique_ptr<SQLite::Database> up_to_date_in_memory(SQLite::Database& database, int from);

}  // namespace rb::store
