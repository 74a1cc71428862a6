// A connection to a book and the one ritual by which it is opened.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <memory>
#include <string>

#include "base/result.h"
#include "store/chain.h"
#include "store/logbook.h"

namespace rb::store {

/// Path by which a book is known, whichever way it was named.
std::filesystem::path settled(const std::filesystem::path& path);

/// Whether a book this program can read stands at a settled path. Looks without a trace: nothing is
/// written to the file nor beside it, whatever it is.
Result<void> probe(const std::filesystem::path& path);

/// Opens the book that probe() found, brings an older schema up to date (for writing only), and
/// from then on lets the connection read, and add events, and do nothing else. The caller holds the
/// writer's lock for Access::write.
Result<std::unique_ptr<SQLite::Database>> connect(const std::filesystem::path& path, Access access);

/// Brings the log beside the book into it and empties it; false when that cannot be done now.
bool empty_log(SQLite::Database& database);

/// Makes a book at a settled path where nothing stands; the caller holds the writer's lock.
Result<void> make_book(const std::filesystem::path& path);

/// The book's own row. Throws SQLite::Exception.
BookName name_of(const SQLite::Database& database);

}  // namespace rb::store
