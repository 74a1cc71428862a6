#include "store/connection.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <system_error>

#include "store/file_header.h"
#include "store/migrations.h"
#include "store/older_book.h"
#include "store/trouble.h"

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
  return fail(Error::Kind::book, path.string(), "this file is not a book of Risebook",
              "It was left as it is; name another file");
}

Failed too_new(const fs::path& path, int found) {
  return fail(Error::Kind::book, path.string(),
              fmt::format("this book is of version {}; this Risebook knows books up to version {}",
                          found, schema_version()),
              "Open it with a newer Risebook; it was left as it is");
}

Failed altered(const fs::path& path, const std::string& fault) {
  return fail(Error::Kind::book, path.string(),
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
      constexpr std::array kAsk{"user_version", "application_id", "integrity_check"};
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
    return fail(Error::Kind::book, path.string(), "there is no book here", "Check the name");
  }
  if (!fs::is_regular_file(status)) return not_a_book(path);
  return guarded(path.string(), kOpening, [&]() -> Result<void> {
    const auto header = read_header(path);
    if (!header || header->application_id != kApplicationId) return not_a_book(path);
    if (header->user_version > schema_version()) return too_new(path, header->user_version);
    return {};
  });
}

BookName name_of(const SQLite::Database& database) {
  SQLite::Statement row(database, "SELECT uuid, tag, created FROM book");
  if (!row.executeStep()) throw SQLite::Exception("its own row is missing", SQLITE_CORRUPT);
  return {row.getColumn(0), row.getColumn(1), row.getColumn(2)};
}

Connected connect(const fs::path& path, Access access) {
  return guarded(path.string(), kOpening, [&]() -> Connected {
    const bool write = access == Access::write;
    auto database = write ? open_for_writing(path) : open_for_reading(path);
    settle_connection(*database);
    const int found = pragma(*database, "user_version");
    if (found > schema_version()) return too_new(path, found);
    if (found < schema_version() && write) {
      const auto faults = schema_faults(*database, found);
      if (!faults.empty()) return altered(path, faults.front());
      if (auto done = bring_up_to_date(*database, path, found); !done) return Failed{done.error()};
    } else if (found < schema_version()) {
      database = up_to_date_in_memory(*database, found);
      settle_connection(*database);
    }
    if (write && database->execAndGet("PRAGMA journal_mode = WAL").getString() != "wal") {
      return fail(Error::Kind::book, path.string(),
                  "this disk cannot keep a book that is read while it is written",
                  "Keep the book on a disk of this tablet");
    }
    if (write) {
      const auto faults = schema_faults(*database, schema_version());
      if (!faults.empty()) return altered(path, faults.front());
      // The triggers that mark pours use functions that are barred in a schema not trusted; this
      // one is ours to the letter.
      database->exec("PRAGMA trusted_schema = ON");
    }
    sqlite3_set_authorizer(database->getHandle(), allow, nullptr);
    return database;
  });
}

bool empty_log(SQLite::Database& database) {
  return sqlite3_wal_checkpoint_v2(database.getHandle(), nullptr, SQLITE_CHECKPOINT_TRUNCATE,
                                   nullptr, nullptr) == SQLITE_OK;
}

}  // namespace rb::store
