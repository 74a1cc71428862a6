// A connection to a book and the one ritual by which it is opened.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/book/logbook.h"
#include "store/file/chain.h"

namespace rb::store {

/// Path by which a book is known, whichever way it was named.
std::filesystem::path settled(const std::filesystem::path& path);

/// Whether a book this program can read stands at a settled path. Looks without a trace: nothing is
/// written to the file nor beside it, whatever it is.
Result<void> probe(const std::filesystem::path& path);

/// Whether the file has no other name: written under two, it would be two books to its lock and
/// log.
Result<void> one_name(const std::filesystem::path& path);

/// A book as it could be opened.
struct Opened {
  std::unique_ptr<SQLite::Database> database{};  ///< none only where it is damaged
  Access access = Access::read;
  std::optional<Error> read_only{};  ///< why it is not open for writing, where that was asked for
  bool damaged = false;              ///< it is not to be read as it stands; `read_only` tells why
  bool looked_through = false;       ///< the whole file was looked through for damage
  bool looked_at_order = false;      ///< and the indexes and marks for telling what the events do
  std::vector<std::string> older_faults{};  ///< of the schema of an older book, read in memory
};

/// Opens the book that probe() found and from then on lets the connection read, and add events, and
/// do nothing else. For writing it first looks whether that may be (opening_look.h), with a bounded
/// cost, and brings an older book up to date; a book that may not be written is opened for reading,
/// nothing changed. An older book opened for reading is brought up to date in memory. The caller
/// holds the writer's lock for Access::write.
Result<Opened> open_connection(const std::filesystem::path& path, Access access);

/// The same where anything but what was asked for is an error.
Result<std::unique_ptr<SQLite::Database>> connect(const std::filesystem::path& path, Access access);

/// Brings the log beside the book into it and empties it; false when that cannot be done now.
bool empty_log(SQLite::Database& database);

/// Makes a book at a settled path where nothing stands; the caller holds the writer's lock.
Result<void> make_book(const std::filesystem::path& path);

/// The book's own row. Throws SQLite::Exception.
BookName name_of(const SQLite::Database& database);

}  // namespace rb::store
