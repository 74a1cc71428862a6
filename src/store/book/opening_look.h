// A look at a book before it is written to, of bounded cost whatever the size of the book.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <optional>
#include <string>

#include "store/file/chain.h"

namespace rb::store {

/// How many hashes are looked at from the end of the book on, and up to which size of its file the
/// whole of it is looked through at once.
inline constexpr int kLastHashes = 64, kEveryHash = -1;
inline constexpr std::uintmax_t kSmallBook = 8U << 20U;  ///< bytes
/// Up to which size every hash, and indexes and marks, are held against the events too (some 10 ms
/// for each MiB).
inline constexpr std::uintmax_t kTinyBook = 1U << 20U;

/// In a plain sentence, what is wrong with the end of the book: head, last event, last hashes.
/// Throws SQLite::Exception.
std::optional<std::string> look_at_end(const SQLite::Database& database, const BookName& name,
                                       int hashes = kLastHashes);

/// The same of the file's own order (SQLite's quick check). Reads the whole file. Throws
/// SQLite::Exception.
std::optional<std::string> look_through(const SQLite::Database& database);

/// The same, and whether the indexes and marks by which pours are found tell what the events do.
/// Costs several times as much: for small books. The schema is the present one.
std::optional<std::string> look_at_order(const SQLite::Database& database);

}  // namespace rb::store
