#include "store/book/connection.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <system_error>

#include "store/book/older_book.h"
#include "store/book/opening_look.h"
#include "store/file/file_header.h"
#include "store/file/migrations.h"
#include "store/file/trouble.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;
using Connected = Result<std::unique_ptr<SQLite::Database>>;

constexpr int kBusyMs = 1000;
constexpr const char* kOpening = "the book cannot be opened";

/// The file as it stands: SQLite takes no lock and makes no file beside it.
std::string as_it_stands(const fs::path& path) {
  std::string uri = "file:";
  for (const char c : path.string()) {
    if (c == '%' || c == '?' || c == '#') {
      uri += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    } else {
      uri += c;
    }
  }
  return uri + "?immutable=1";
}

int pragma(SQLite::Database& database, const char* name) {
  return database.execAndGet(std::string("PRAGMA ") + name).getInt();
}

Failed not_a_book(const fs::path& path) {
  return fail(BookTrouble::not_a_book, path.string(), "this file is not a book of Risebook",
              "It was left as it is; name another file");
}

Failed too_new(const fs::path& path, int found) {
  return fail(BookTrouble::newer, path.string(),
              fmt::format("this book is of version {}; this Risebook knows books up to version {}",
                          found, schema_version()),
              "Open it with a newer Risebook; it was left as it is");
}

Failed altered(const fs::path& path, const std::string& fault) {
  return fail(BookTrouble::damaged, path.string(),
              "the book's own rules were altered by another program: " + fault,
              "It can be read, not written; keep it, and go on from the last copy");
}

/// What a book's connection may do, beyond reading: SQLite asks before it compiles a statement.
int allow(void* /*unused*/, int action, const char* first, const char* second,
          const char* /*database*/, const char* within) {
  const std::string_view what = first ? first : "";
  switch (action) {
    case SQLITE_SELECT:
    case SQLITE_READ:
    case SQLITE_FUNCTION:
    case SQLITE_TRANSACTION:
      return SQLITE_OK;
    case SQLITE_INSERT:
    case SQLITE_UPDATE: {
      constexpr std::array kAdd{"events", "keys", "heads"};
      constexpr std::array kMark{"pours", "pour_boots", "pour_days"};
      const auto among = [&](const auto& names) {
        return std::find(names.begin(), names.end(), what) != names.end();
      };
      const std::string_view trigger = within ? within : "";
      const bool may = action == SQLITE_INSERT && trigger.empty() ? among(kAdd)
                       : trigger == "events_move_head"
                           ? action == SQLITE_UPDATE && what == "head"
                           : trigger.starts_with("events_mark_") && among(kMark);
      return may ? SQLITE_OK : SQLITE_DENY;
    }
    case SQLITE_PRAGMA: {
      constexpr std::array kAsk{"user_version", "application_id"};
      if (what == "quick_check" || what == "integrity_check") return SQLITE_OK;
      return !second && std::find(kAsk.begin(), kAsk.end(), what) != kAsk.end() ? SQLITE_OK
                                                                                : SQLITE_DENY;
    }
    default:
      return SQLITE_DENY;
  }
}

void settle_connection(SQLite::Database& database) {
  database.exec("PRAGMA foreign_keys = ON");
  database.exec("PRAGMA recursive_triggers = ON");
  database.exec("PRAGMA trusted_schema = OFF");
  database.exec("PRAGMA cell_size_check = ON");
}

/// Whether the disk gave no room, or no leave, for the file that SQLite makes beside a book to read
/// it together with its log.
bool no_place_beside(const SQLite::Exception& thrown) {
  const int code = thrown.getErrorCode() & 0xFF;
  const int finer = thrown.getExtendedErrorCode();
  return code == SQLITE_CANTOPEN || code == SQLITE_READONLY || code == SQLITE_FULL ||
         finer == SQLITE_IOERR_SHMOPEN || finer == SQLITE_IOERR_SHMSIZE ||
         finer == SQLITE_IOERR_SHMMAP;
}

/// A book on a disk that is full or cannot be written to is read as it stands, unless a log beside
/// it holds what the book itself does not yet.
std::unique_ptr<SQLite::Database> open_for_reading(const fs::path& path) {
  try {
    auto database =
        std::make_unique<SQLite::Database>(path.string(), SQLite::OPEN_READONLY, kBusyMs);
    pragma(*database, "user_version");  // the first read finds out
    return database;
  } catch (const SQLite::Exception& thrown) {
    std::error_code error;
    const auto size = fs::file_size(path.string() + "-wal", error);
    const bool all_there = error || size == 0;
    if (!all_there || !no_place_beside(thrown)) throw;
    return std::make_unique<SQLite::Database>(as_it_stands(path),
                                              SQLite::OPEN_READONLY | SQLite::OPEN_URI);
  }
}

std::unique_ptr<SQLite::Database> open_for_writing(const fs::path& path) {
  auto database =
      std::make_unique<SQLite::Database>(path.string(), SQLite::OPEN_READWRITE, kBusyMs);
  database->exec("PRAGMA synchronous = FULL");
  return database;
}

}  // namespace

fs::path settled(const fs::path& path) {
  std::error_code error;
  const auto full = fs::weakly_canonical(fs::absolute(path, error), error);
  return error ? path : full;
}

Result<void> probe(const fs::path& path) {
  std::error_code error;
  const auto status = fs::status(path, error);
  if (!fs::exists(status)) {
    return fail(BookTrouble::not_there, path.string(), "there is no book here", "Check the name");
  }
  if (!fs::is_regular_file(status)) return not_a_book(path);
  return guarded(path.string(), kOpening, [&]() -> Result<void> {
    const auto header = read_header(path);
    if (!header || header->application_id != kApplicationId) return not_a_book(path);
    if (header->user_version > schema_version()) return too_new(path, header->user_version);
    return {};
  });
}

Result<void> one_name(const fs::path& path) {
  std::error_code error;
  const auto names = fs::hard_link_count(path, error);
  if (error || names == 1) return {};
  return fail(BookTrouble::many_names, path.string(),
              fmt::format("this book's file has {} names (hard links) and is read only", names),
              "Copy it to a file of its own, or take the other names away");
}

BookName name_of(const SQLite::Database& database) {
  SQLite::Statement row(database, "SELECT uuid, tag, created FROM book");
  if (!row.executeStep()) throw SQLite::Exception("its own row is missing", SQLITE_CORRUPT);
  return {row.getColumn(0), row.getColumn(1), row.getColumn(2)};
}

namespace {

bool is_damage(const SQLite::Exception& thrown) {
  const int code = thrown.getErrorCode() & 0xFF;
  // SQLITE_ERROR: a table or column that every book has is not there.
  return code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_ERROR;
}

Opened damaged(const fs::path& path, const std::string& fault) {
  Opened opened;
  opened.damaged = true;
  opened.read_only = Error{Error::Kind::book, path.string(), "the book is damaged: " + fault,
                           "What is whole in it can be read. Keep the file; go on in a new book",
                           BookTrouble::damaged};
  return opened;
}

/// A close that brings the log in would write to the book.
void leave_log(SQLite::Database& database, bool leave) {
  sqlite3_db_config(database.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, leave ? 1 : 0, nullptr);
}

/// For reading only, from now on.
void close_to_writing(SQLite::Database& database) {
  database.exec("PRAGMA query_only = ON");
  sqlite3_set_authorizer(database.getHandle(), allow, nullptr);
}

void read_older(Opened& opened, int version) {
  opened.older_faults = schema_faults(*opened.database, version);
  opened.database = up_to_date_in_memory(*opened.database, version);
  settle_connection(*opened.database);
}

/// Why the book is not to be written, or nothing; an older one is up to date then.
std::optional<Error> not_to_be_written(Opened& opened, const fs::path& path, int version) {
  const auto ready = guarded(path.string(), kOpening, [&]() -> Result<void> {
    if (const auto fault = header_fault(path)) {
      return fail(BookTrouble::damaged, path.string(), "the book is damaged: " + *fault,
                  "It can be read, not written; save it with risebook rescue");
    }
    if (const auto faults = schema_faults(*opened.database, version); !faults.empty()) {
      return altered(path, faults.front());
    }
    if (version < schema_version()) {
      if (auto done = bring_up_to_date(*opened.database, path, version); !done) return done;
    }
    if (opened.database->execAndGet("PRAGMA journal_mode = WAL").getString() != "wal") {
      return fail(BookTrouble::read_only, path.string(),
                  "this disk cannot keep a book that is read while it is written",
                  "Keep the book on a disk of this tablet");
    }
    // The triggers that mark pours use functions that are barred in a schema not trusted; this one
    // is ours to the letter.
    opened.database->exec("PRAGMA trusted_schema = ON");
    // Whatever else stands in the way of a tap shows now, not at the first tap.
    opened.database->exec("BEGIN IMMEDIATE");
    opened.database->exec("ROLLBACK");
    return {};
  });
  return ready ? std::nullopt : std::optional(ready.error());
}

Result<Opened> ready_to_write(const fs::path& path) {
  Opened opened{.database = open_for_writing(path)};
  auto& database = *opened.database;
  leave_log(database, true);
  settle_connection(database);
  const int version = pragma(database, "user_version");
  if (version > schema_version()) return too_new(path, version);
  std::error_code error;
  const auto size = fs::file_size(path, error);
  const bool tiny = !error && size < kTinyBook;
  auto fault = look_at_end(database, name_of(database), tiny ? kEveryHash : kLastHashes);
  if (!fault && !error && size < kSmallBook) {
    opened.looked_at_order = version == schema_version() && tiny;
    fault = opened.looked_at_order ? look_at_order(database) : look_through(database);
    opened.looked_through = true;
  }
  if (fault) return damaged(path, *fault);
  opened.read_only = not_to_be_written(opened, path, version);
  if (opened.read_only) {
    if (pragma(database, "user_version") < schema_version()) read_older(opened, version);
    close_to_writing(*opened.database);
    return opened;
  }
  opened.access = Access::write;
  leave_log(database, false);
  sqlite3_wal_autocheckpoint(database.getHandle(), 0);  // no tap waits for it: see empty_log()
  sqlite3_set_authorizer(database.getHandle(), allow, nullptr);
  return opened;
}

Result<Opened> ready_to_read(const fs::path& path) {
  Opened opened{.database = open_for_reading(path)};
  settle_connection(*opened.database);
  const int version = pragma(*opened.database, "user_version");
  if (version > schema_version()) return too_new(path, version);
  if (version < schema_version()) read_older(opened, version);
  sqlite3_set_authorizer(opened.database->getHandle(), allow, nullptr);
  return opened;
}

}  // namespace

Result<Opened> open_connection(const fs::path& path, Access access) {
  return guarded(path.string(), kOpening, [&]() -> Result<Opened> {
    try {
      return access == Access::write ? ready_to_write(path) : ready_to_read(path);
    } catch (const SQLite::Exception& thrown) {
      if (!is_damage(thrown)) throw;
      return damaged(path, thrown.what());
    }
  });
}

Connected connect(const fs::path& path, Access access) {
  auto opened = open_connection(path, access);
  if (!opened) return Failed{opened.error()};
  if (opened->read_only) return Failed{*opened->read_only};
  return std::move(opened->database);
}

bool empty_log(SQLite::Database& database) {
  return sqlite3_wal_checkpoint_v2(database.getHandle(), nullptr, SQLITE_CHECKPOINT_TRUNCATE,
                                   nullptr, nullptr) == SQLITE_OK;
}

}  // namespace rb::store
