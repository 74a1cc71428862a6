#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <set>

#include "store/book/connection.h"
#include "store/book/logbook.h"
#include "store/copies/copy_book.h"
#include "store/copies/mirror.h"
#include "store/file/identity.h"
#include "store/file/migrations.h"
#include "store/file/new_book.h"
#include "store/file/trouble.h"
#include "store/photos/carry.h"
#include "store/photos/photo.h"
#include "store/salvage/salvaged_book.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr const char* kRestoring = "the book could not be restored";

std::string lacking(const std::string& tag, std::int64_t first, std::int64_t last) {
  const auto from = event_id(tag, first).text;
  return first == last
             ? fmt::format("Event {} is not in it", from)
             : fmt::format("Events {} to {} are not in it", from, event_id(tag, last).text);
}

/// Signed heads and the keys they are signed with, where their event is there.
void put_heads(SQLite::Database& database, const std::vector<Signed>& heads) {
  SQLite::Statement key(database, "INSERT INTO keys (key, since) VALUES (?, ?)");
  SQLite::Statement add(database,
                        "INSERT INTO heads (seq, hash, key, signature, made) "
                        "SELECT ?1, ?2, ?3, ?4, ?5 "
                        "WHERE EXISTS (SELECT 1 FROM events WHERE seq = ?1 AND hash = ?2)");
  const auto bind = [](SQLite::Statement& to, int index, const auto& bytes) {
    to.bind(index, bytes.data(), static_cast<int>(bytes.size()));
  };
  std::set<PublicKey> known;
  for (const Signed& head : heads) {
    if (known.insert(head.key).second) {
      bind(key, 1, head.key);
      key.bind(2, head.made);
      key.exec();
      key.reset();
    }
    add.bind(1, head.seq);
    bind(add, 2, head.hash);
    bind(add, 3, head.key);
    bind(add, 4, head.signature);
    add.bind(5, head.made);
    add.exec();
    add.reset();
  }
}

Result<RestoreReport> from_mirror(const fs::path& from, const fs::path& to) {
  auto content = read_mirror(plain_disk(), from);
  if (!content) return Failed{content.error()};
  if (!content->name) {
    return fail(Error::Kind::book, from.string(), "the lines that name its book are damaged",
                "Restore from a copy, or from another mirror");
  }
  RestoreReport report;
  for (const auto& [first, last] : content->missing()) {
    report.lacks.push_back(lacking(content->name->tag, first, last));
  }
  report.lacks.insert(report.lacks.end(), content->damaged.begin(), content->damaged.end());
  {
    SQLite::Database database(to.string(), SQLite::OPEN_READWRITE);
    database.exec("PRAGMA synchronous = FULL");
    Salvage rows;
    rows.name = content->name;
    rows.tag = content->name->tag;
    for (auto& row : content->rows) rows.rows.push_back({std::move(row.row), row.hash});
    if (!rows.rows.empty()) rows.head = Head{rows.rows.back().row.seq, rows.rows.back().hash};
    SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
    fill_book(database, rows);
    put_heads(database, content->heads);
    database.exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
    whole.commit();
  }
  return report;
}

Result<RestoreReport> from_copy(const fs::path& from, const fs::path& to) {
  auto database = connect(from, Access::read);
  if (!database) return Failed{database.error()};
  SQLite::Transaction view(**database);
  SQLite::Database copy(to.string(), SQLite::OPEN_READWRITE);
  SQLite::Backup(copy, **database).executeStep(-1);
  copy.exec("PRAGMA journal_mode = DELETE");
  return RestoreReport{};
}

}  // namespace

Result<RestoreReport> restore_book(const fs::path& from, const fs::path& to_given) {
  const auto to = settled(to_given);
  return guarded(to.string(), kRestoring, [&]() -> Result<RestoreReport> {
    if (auto clear = nothing_stands(to); !clear) return Failed{clear.error()};
    const auto source = settled(from);
    const bool mirror = looks_like_mirror(plain_disk(), source);
    if (!mirror) {
      if (auto book = probe(source); !book) return Failed{book.error()};
    }
    auto unfinished = begin_book(to);
    if (!unfinished) return Failed{unfinished.error()};
    auto report =
        mirror ? from_mirror(source, unfinished->path()) : from_copy(source, unfinished->path());
    if (!report) return report;
    {
      const auto book = Logbook::open(unfinished->path(), Access::read);
      if (!book) return Failed{book.error()};
      const auto looked = book->verify();
      if (!looked) return Failed{looked.error()};
      report->events = static_cast<std::int64_t>(looked->events);
      report->head_hash = looked->head_hash;
      if (!looked->sound() && report->lacks.empty()) {
        return fail(Error::Kind::book, source.string(),
                    "it does not hold, nothing was restored: " + looked->faults.front(),
                    "risebook rescue saves what is whole of it");
      }
      auto lacks = bring_photos(photos_folder(source.parent_path(), looked->tag), *looked,
                                photos_folder(to.parent_path(), looked->tag));
      report->lacks.insert(report->lacks.end(), lacks.begin(), lacks.end());
    }
    if (auto done = put_book(*unfinished); !done) return Failed{done.error()};
    return report;
  });
}

}  // namespace rb::store
