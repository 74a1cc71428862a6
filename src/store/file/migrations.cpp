#include "store/file/migrations.h"

#include <fmt/format.h>
#include <risebook_migrations.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <tuple>

namespace rb::store {

namespace {

struct Step {
  const unsigned char* begin;
  const unsigned char* end;
};

/// Step n leads to schema version n (the first is 1).
const std::array kSteps{
    Step{embedded::rb_migration_0001, embedded::rb_migration_0001_end},
    Step{embedded::rb_migration_0002, embedded::rb_migration_0002_end},
};

}  // namespace

int schema_version() {
  return static_cast<int>(kSteps.size());
}

void migrate(SQLite::Database& database, int from, int to) {
  for (auto step = from; step < to; ++step) {
    const auto& sql = kSteps.at(static_cast<std::size_t>(step));
    database.exec(std::string(sql.begin, sql.end));
  }
  database.exec("PRAGMA user_version = " + std::to_string(to));
}

std::vector<SchemaItem> schema_of(const SQLite::Database& database) {
  SQLite::Statement rows(database,
                         "SELECT type, name, coalesce(sql, '') FROM sqlite_schema "
                         "WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name");
  std::vector<SchemaItem> items;
  while (rows.executeStep()) items.push_back(rows.getColumns<SchemaItem, 3>());
  return items;
}

const std::vector<SchemaItem>& expected_schema(int version) {
  static const auto all = [] {
    std::vector<std::vector<SchemaItem>> schemas(1);
    SQLite::Database fresh(":memory:", SQLite::OPEN_READWRITE);
    for (int step = 0; step < schema_version(); ++step) {
      migrate(fresh, step, step + 1);
      schemas.push_back(schema_of(fresh));
    }
    return schemas;
  }();
  return all.at(static_cast<std::size_t>(version));
}

std::vector<std::string> schema_faults(const SQLite::Database& database, int version) {
  const auto found = schema_of(database);
  const auto& expected = expected_schema(version);
  std::vector<SchemaItem> odd;
  std::set_symmetric_difference(
      found.begin(), found.end(), expected.begin(), expected.end(), std::back_inserter(odd),
      [](const SchemaItem& a, const SchemaItem& b) {
        return std::tie(a.kind, a.name, a.sql) < std::tie(b.kind, b.name, b.sql);
      });
  std::vector<std::string> faults;
  for (const auto& item : odd) {
    const auto same_name = [&](const SchemaItem& other) {
      return other.kind == item.kind && other.name == item.name;
    };
    const bool is = std::any_of(found.begin(), found.end(), same_name);
    const bool ought = std::any_of(expected.begin(), expected.end(), same_name);
    // An altered one is in the difference twice: as it is and as it ought to be.
    if (is && ought && std::find(expected.begin(), expected.end(), item) != expected.end())
      continue;
    faults.push_back(fmt::format("The {} {} {}", item.kind, item.name,
                                 !ought ? "does not belong in a book"
                                 : is   ? "is altered"
                                        : "is missing"));
  }
  return faults;
}

}  // namespace rb::store
