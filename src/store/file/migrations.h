// The numbered steps (db/) that make a book's schema.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

namespace rb::store {

/// Marks the file as a book of pours; also what the `file` command may know it by ("Rise").
inline constexpr int kApplicationId = 0x52697365;

/// The schema version this program reads and writes.
int schema_version();

/// Carries out the steps after `from`, up to `to`, and writes that number into the database. Inside
/// the caller's transaction. Throws SQLite::Exception.
void migrate(SQLite::Database& database, int from, int to = schema_version());

/// A table, index or trigger as its file tells it.
struct SchemaItem {
  std::string kind, name, sql;
  bool operator==(const SchemaItem&) const = default;
};

/// Ordered by kind and name. Throws SQLite::Exception.
std::vector<SchemaItem> schema_of(const SQLite::Database& database);

/// What schema_of() gives for an unaltered book of that version.
const std::vector<SchemaItem>& expected_schema(int version);

/// In plain sentences, how the schema of a book of that version is not what it ought to be. Throws
/// SQLite::Exception.
std::vector<std::string> schema_faults(const SQLite::Database& database, int version);

}  // namespace rb::store
