#include "store/copies/rescue.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <map>

#include "store/book/connection.h"
#include "store/book/logbook.h"
#include "store/copies/mirror.h"
#include "store/file/file_bytes.h"
#include "store/file/identity.h"
#include "store/file/migrations.h"
#include "store/file/new_book.h"
#include "store/file/trouble.h"
#include "store/photos/carry.h"
#include "store/photos/photo.h"
#include "store/salvage/salvage.h"
#include "store/salvage/salvaged_book.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr const char* kRescuing = "the book could not be rescued";

/// Rows of the mirror in the place of those that are not whole; how many.
Result<std::size_t> add_mirror(const fs::path& path, Salvage& salvage) {
  auto content = read_mirror(plain_disk(), path);
  if (!content) return Failed{content.error()};
  const auto& theirs = content->name;
  const bool other = theirs && (salvage.name ? theirs->uuid != salvage.name->uuid
                                             : !salvage.tag.empty() && theirs->tag != salvage.tag);
  if (other) {
    return fail(Error::Kind::input, path.string(),
                fmt::format("is the mirror of another book ({})", theirs->tag),
                "Give the mirror of this book, or none");
  }
  if (!salvage.name) salvage.name = theirs;
  if (salvage.tag.empty() && theirs) salvage.tag = theirs->tag;
  std::map<std::int64_t, SalvagedRow> rows;
  for (auto& row : salvage.rows) rows.emplace(row.row.seq, std::move(row));
  std::size_t added = 0;
  for (auto& [row, hash] : content->rows) {
    if (row.id != event_id(salvage.tag, row.seq).text) continue;
    const auto seq = row.seq;
    if (rows.try_emplace(seq, SalvagedRow{std::move(row), hash}).second) ++added;
  }
  salvage.rows.clear();
  for (auto& [seq, row] : rows) salvage.rows.push_back(std::move(row));
  if (!salvage.rows.empty()) salvage.last = std::max(salvage.last, salvage.rows.back().row.seq);
  std::map<std::int64_t, DamagedEvent> damaged;
  for (auto& event : salvage.damaged) damaged.emplace(event.number, std::move(event));
  salvage.damaged.clear();
  for (std::int64_t seq = 1; seq <= salvage.last; ++seq) {
    if (rows.contains(seq)) continue;
    const auto known = damaged.find(seq);
    salvage.damaged.push_back(known != damaged.end()
                                  ? known->second
                                  : DamagedEvent{seq, event_id(salvage.tag, seq), {}, true});
  }
  return added;
}

void put_origin(SQLite::Database& database, const BookName& name, const Head& good) {
  const auto now = std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
  SQLite::Statement origin(
      database, "INSERT INTO origins (uuid, tag, seq, hash, made) VALUES (?, ?, ?, ?, ?)");
  origin.bind(1, name.uuid);
  origin.bind(2, name.tag);
  origin.bind(3, good.seq);
  origin.bind(4, good.hash.data(), static_cast<int>(good.hash.size()));
  origin.bind(5, static_cast<std::int64_t>(now.time_since_epoch().count()));
  origin.exec();
}

/// The device's keys and signed heads, as far as they still read: their events are as they were.
void bring_signatures(SQLite::Database& to, const fs::path& from) {
  try {
    const SQLite::Database old(from.string(), SQLite::OPEN_READONLY);
    const auto bring = [&](const char* table, int columns, const char* places) {
      SQLite::Statement rows(old, fmt::format("SELECT * FROM {}", table));
      while (rows.executeStep()) {
        SQLite::Statement insert(to, fmt::format("INSERT INTO {} VALUES ({})", table, places));
        for (int i = 0; i < columns; ++i) {
          const auto value = rows.getColumn(i);
          if (value.isInteger()) {
            insert.bind(i + 1, value.getInt64());
          } else {
            insert.bind(i + 1, value.getBlob(), value.getBytes());
          }
        }
        insert.tryExecuteStep();  // one that does not fit is left behind
      }
    };
    bring("keys", 2, "?, ?");
    bring("heads", 5, "?, ?, ?, ?, ?");
  } catch (const SQLite::Exception&) {  // what cannot be read cannot be brought
  }
}

void write_book(const fs::path& path, const fs::path& from, Salvage& salvage, const Head& good) {
  SQLite::Database database(path.string(), SQLite::OPEN_READWRITE);
  database.exec("PRAGMA synchronous = FULL");
  SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
  const bool named = salvage.name.has_value();
  if (!named) {
    auto name = name_of(salvage);
    name.uuid = random_uuid();
    salvage.name = name;
  }
  const auto name = *salvage.name;
  fill_book(database, salvage);
  if (!named) salvage.name.reset();
  tell_lost(database, salvage);
  put_origin(database, name, good);
  if (named) bring_signatures(database, from);  // they are made over the book's name
  database.exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
  whole.commit();
}

Result<RescueReport> rescue(const fs::path& from, const fs::path& to,
                            const std::optional<fs::path>& mirror) {
  std::error_code error;
  if (!fs::exists(from, error) && !fs::exists(log_of(from), error)) {
    return fail(Error::Kind::book, from.string(), "there is no book here",
                "Check the name; a book that is gone is made again from its mirror by restore");
  }
  if (auto clear = nothing_stands(to); !clear) return Failed{clear.error()};
  auto found = salvage(from);
  if (!found) return Failed{found.error()};
  RescueReport report;
  const auto good = last_good(*found);
  report.last_good = good.seq;
  report.last_good_hash = to_hex(good.hash);
  if (mirror) {
    const auto added = add_mirror(settled(*mirror), *found);
    if (!added) return Failed{added.error()};
    report.from_mirror = *added;
  }
  if (found->rows.empty() && !found->name) {
    return fail(Error::Kind::book, from.string(), "nothing of a book can be read in this file",
                "Keep it, and restore the book from its mirror or a copy");
  }
  auto unfinished = begin_book(to);
  if (!unfinished) return Failed{unfinished.error()};
  report.name_lost = !found->name;
  write_book(unfinished->path(), from, *found, good);
  {
    const auto book = Logbook::open(unfinished->path(), Access::read);
    if (!book) return Failed{book.error()};
    const auto looked = book->verify();
    if (!looked) return Failed{looked.error()};
    report.faults = looked->faults;
    report.events = looked->events;
    report.tag = looked->tag;
    const Path there = photos_folder(to.parent_path(), looked->tag);
    if (mirror) {
      (void)carry_photos(photos_folder(settled(*mirror).parent_path(), looked->tag), there);
    }
    report.photos = bring_photos(photos_folder(from.parent_path(), looked->tag), *looked, there);
  }
  report.lost = found->damaged;
  if (auto done = put_book(*unfinished); !done) return Failed{done.error()};
  return report;
}

}  // namespace

Result<RescueReport> rescue_book(const fs::path& from, const fs::path& to,
                                 const std::optional<fs::path>& mirror) {
  const auto old = settled(from);
  return guarded(old.string(), kRescuing,
                 [&]() -> Result<RescueReport> { return rescue(old, settled(to), mirror); });
}

}  // namespace rb::store
