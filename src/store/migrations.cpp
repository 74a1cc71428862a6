#include "store/migrations.h"

#include <risebook_migrations.h>

#include <array>
#include <string>

namespace rb::store {

namespace {

struct Step {
  const unsigned char* begin;
  const unsigned char* end;
};

/// Step n leads to schema version n (the first is 1).
const std::array kSteps{
    Step{embedded::rb_migration_0001, embedded::rb_migration_0001_end},
};

}  // namespace

int schema_version() {
  return static_cast<int>(kSteps.size());
}

void migrate(SQLite::Database& database, int from) {
  for (auto step = static_cast<std::size_t>(from); step < kSteps.size(); ++step) {
    database.exec(std::string(kSteps[step].begin, kSteps[step].end));
  }
  database.exec("PRAGMA user_version = " + std::to_string(schema_version()));
}

std::vector<SchemaItem> schema_of(const SQLite::Database& database) {
  SQLite::Statement rows(database,
                         "SELECT type, name, coalesce(sql, '') FROM sqlite_schema "
                         "WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name");
  std::vector<SchemaItem> items;
  while (rows.executeStep()) items.push_back(rows.getColumns<SchemaItem, 3>());
  return items;
}

const std::vector<SchemaItem>& expected_schema() {
  static const std::vector<SchemaItem> items = [] {
    SQLite::Database fresh(":memory:", SQLite::OPEN_READWRITE);
    migrate(fresh, 0);
    return schema_of(fresh);
  }();
  return items;
}

}  // namespace rb::store
