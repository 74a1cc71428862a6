#include "store/salvage/salvaged_book.h"

#include <SQLiteCpp/Backup.h>
#include <fmt/format.h>

#include <map>
#include <mutex>
#include <optional>
#include <utility>

#include "store/file/migrations.h"

namespace rb::store {

namespace {

/// Triggers that hold a book to gapless growth: out of the way while rows with gaps are put in.
class WithoutOrder {
 public:
  explicit WithoutOrder(SQLite::Database& database) : database_(database) {
    SQLite::Statement triggers(database_,
                               "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' "
                               "AND (name IN ('events_only_follow', 'events_move_head'))");
    while (triggers.executeStep()) {
      taken_.emplace_back(triggers.getColumn(0).getString(), triggers.getColumn(1).getString());
    }
    triggers.reset();
    for (const auto& [name, sql] : taken_) database_.exec("DROP TRIGGER " + name);
  }
  void put_back() {
    for (const auto& [name, sql] : taken_) database_.exec(sql);
  }

 private:
  SQLite::Database& database_;
  std::vector<std::pair<std::string, std::string>> taken_;
};

void put_rows(SQLite::Database& database, const Salvage& salvage) {
  SQLite::Statement insert(
      database,
      fmt::format("INSERT INTO events ({}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", kRowColumns));
  const auto bind_hash = [&](int index, const Hash& hash) {
    insert.bind(index, hash.data(), static_cast<int>(hash.size()));
  };
  for (const auto& [row, hash] : salvage.rows) {
    insert.bind(1, row.seq);
    insert.bind(2, row.pour);
    insert.bind(3, row.id);
    insert.bind(4, row.line);
    insert.bind(5, row.entered);
    insert.bind(6, row.steady);
    insert.bind(7, row.boot);
    insert.bind(8, row.kept);
    bind_hash(9, row.previous);
    bind_hash(10, hash);
    insert.exec();
    insert.reset();
  }
}

}  // namespace

BookName name_of(const Salvage& salvage) {
  if (salvage.name) return *salvage.name;
  auto tag = salvage.tag;
  tag.resize(5, '-');
  return {"00000000-0000-0000-0000-000000000000", tag, 0};
}

namespace {

/// Fills a book that has its schema and nothing else.
void fill_empty(SQLite::Database& database, const Salvage& salvage) {
  WithoutOrder order(database);
  const auto name = name_of(salvage);
  SQLite::Statement book(database,
                         "INSERT INTO book (one, uuid, tag, created) VALUES (1, ?, ?, ?)");
  book.bind(1, name.uuid);
  book.bind(2, name.tag);
  book.bind(3, name.created);
  book.exec();
  put_rows(database, salvage);
  Head head{0, hash_of(name)};
  if (!salvage.rows.empty()) head = {salvage.rows.back().row.seq, salvage.rows.back().hash};
  if (salvage.head && salvage.head->seq > head.seq) head = *salvage.head;
  // Numbers that were given once are not given again.
  head.seq = std::max(head.seq, salvage.last);
  SQLite::Statement last(database, "INSERT INTO head (one, seq, hash) VALUES (1, ?, ?)");
  last.bind(1, head.seq);
  last.bind(2, head.hash.data(), static_cast<int>(head.hash.size()));
  last.exec();
  order.put_back();
}

/// An empty book in memory; its schema is laid down once and copied from then on.
std::unique_ptr<SQLite::Database> empty_in_memory() {
  static std::mutex one_copies;
  static const std::unique_ptr<SQLite::Database> sample = [] {
    auto made = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE);
    migrate(*made, 0);
    return made;
  }();
  auto database = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE);
  const std::lock_guard<std::mutex> held(one_copies);
  SQLite::Backup(*database, *sample).executeStep();
  return database;
}

}  // namespace

void fill_book(SQLite::Database& database, const Salvage& salvage) {
  migrate(database, 0);
  fill_empty(database, salvage);
}

void tell_lost(SQLite::Database& database, const Salvage& salvage) {
  std::map<std::int64_t, Hash> told;  // the hash of each number that the next one tells
  for (const auto& row : salvage.rows) told.emplace(row.row.seq - 1, row.row.previous);
  if (salvage.head) told.emplace(salvage.head->seq, salvage.head->hash);
  SQLite::Statement insert(database,
                           "INSERT INTO lost (seq, pour, missing, hash) VALUES (?, ?, ?, ?)");
  const auto put = [&](std::int64_t seq, const std::optional<PourId>& pour, bool missing) {
    insert.bind(1, seq);
    if (pour) insert.bind(2, pour->text);
    insert.bind(3, missing ? 1 : 0);
    const auto hash = told.find(seq);
    if (hash != told.end()) {
      insert.bind(4, hash->second.data(), static_cast<int>(hash->second.size()));
    }
    insert.exec();
    insert.reset();
    insert.clearBindings();
  };
  if (!salvage.name) put(0, std::nullopt, true);
  for (const auto& event : salvage.damaged) put(event.number, event.pour, event.missing);
}

std::unique_ptr<SQLite::Database> book_in_memory(const Salvage& salvage) {
  auto database = empty_in_memory();
  SQLite::Transaction whole(*database);
  fill_empty(*database, salvage);
  whole.commit();
  database->exec("PRAGMA query_only = ON");
  return database;
}

}  // namespace rb::store
