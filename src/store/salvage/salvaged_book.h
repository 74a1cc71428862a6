// The whole rows of a damaged book as a book again.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <memory>

#include "store/salvage/salvage.h"

namespace rb::store {

/// Makes the present schema in an empty database and puts the rows into it as they are, numbers and
/// hashes unchanged, gaps and all. Where the book's own name is lost it gets one that says nothing
/// (a UUID of zeros). Inside the caller's transaction. Throws SQLite::Exception.
void fill_book(SQLite::Database& database, const Salvage& salvage);

/// Tells in the book what is lost: the numbers of `salvage.damaged`, the book's own name where that
/// is lost, each with the hash that what came after tells of it. After fill_book(), in the same
/// transaction.
void tell_lost(SQLite::Database& database, const Salvage& salvage);

/// A book filled so in memory, to be read like any book. Throws SQLite::Exception.
std::unique_ptr<SQLite::Database> book_in_memory(const Salvage& salvage);

/// The name a salvaged book goes by.
BookName name_of(const Salvage& salvage);

}  // namespace rb::store
