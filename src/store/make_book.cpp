// Making a book: under another name first, so that a book stands there whole or not at all.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <system_error>

#include "store/connection.h"
#include "store/identity.h"
#include "store/migrations.h"
#include "store/trouble.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

void write_book(const fs::path& path, const BookName& name) {
  SQLite::Database database(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  database.exec("PRAGMA synchronous = FULL");
  {
    SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
    migrate(database, 0);
    database.exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
    SQLite::Statement book(database,
                           "INSERT INTO book (one, uuid, tag, created) VALUES (1, ?, ?, ?)");
    book.bind(1, name.uuid);
    book.bind(2, name.tag);
    book.bind(3, name.created);
    book.exec();
    SQLite::Statement head(database, "INSERT INTO head (one, seq, hash) VALUES (1, 0, ?)");
    const auto hash = hash_of(name);
    head.bind(1, hash.data(), static_cast<int>(hash.size()));
    head.exec();
    whole.commit();
  }
  database.exec("PRAGMA journal_mode = WAL");
}

/// The names in a folder are on the disk when this returns true.
bool sync_folder(const fs::path& folder) {
  const int handle = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return false;
  const bool done = fsync(handle) == 0;
  close(handle);
  return done;
}

}  // namespace

Result<void> make_book(const fs::path& path) {
  const auto where = path.string();
  return guarded(where, "the book could not be made", [&]() -> Result<void> {
    if (fs::exists(fs::symlink_status(path))) {
      return fail(Error::Kind::book, where, "there is already a file here",
                  "Open it, or give the new book another name");
    }
    for (const char* beside : {"-wal", "-journal"}) {
      if (fs::exists(where + beside)) {
        return fail(Error::Kind::book, where + beside,
                    "this file is left from another book and may hold events of it",
                    "Put it back beside its book, or give the new book another name");
      }
    }
    const fs::path unfinished = where + ".new";
    for (const char* part : {"", "-wal", "-shm", "-journal"})
      fs::remove(unfinished.string() + part);
    const auto now =
        std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
    write_book(unfinished, {random_uuid(), random_tag(), now.time_since_epoch().count()});
    fs::rename(unfinished, path);
    if (!sync_folder(path.parent_path())) {
      return fail(Error::Kind::book, where, "the disk did not confirm the new book",
                  "Try again, or keep the book on a disk of this tablet");
    }
    return {};
  });
}

}  // namespace rb::store
