// Making a book: under another name first, so that a book stands there whole or not at all.
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <string_view>
#include <system_error>
#include <vector>

#include "store/book/connection.h"
#include "store/file/identity.h"
#include "store/file/migrations.h"
#include "store/file/new_book.h"
#include "store/file/trouble.h"

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

/// Removes what an interrupted making of this very book left. Certainly ours: the name is one that
/// only Unfinished gives, the file a plain one of this user's under that name alone, and the
/// writer's lock, which the caller holds, says that nobody is making the book now.
void sweep(const fs::path& path) {
  std::error_code ignored;
  std::vector<fs::path> left;
  for (const auto& entry : fs::directory_iterator(path.parent_path(), ignored)) {
    auto name = entry.path().string();
    for (const std::string_view tail : {"-wal", "-shm", "-journal"}) {
      if (name.ends_with(tail)) name.resize(name.size() - tail.size());
    }
    struct stat info {};
    if (unfinished_name(name, path) && lstat(entry.path().c_str(), &info) == 0 &&
        S_ISREG(info.st_mode) && info.st_uid == geteuid() && info.st_nlink == 1) {
      left.push_back(entry.path());
    }
  }
  for (const auto& file : left) fs::remove(file, ignored);
}

}  // namespace

Result<void> make_book(const fs::path& path) {
  const auto where = path.string();
  auto made = guarded(where, "the book could not be made", [&]() -> Result<void> {
    if (fs::exists(fs::symlink_status(path))) {
      return fail(BookTrouble::in_the_way, where, "there is already a file here",
                  "Open it, or give the new book another name");
    }
    for (const char* beside : {"-wal", "-journal"}) {
      if (fs::exists(fs::symlink_status(where + beside))) {
        return fail(BookTrouble::in_the_way, where + beside,
                    "this file is left from another book and may hold events of it",
                    "Put it back beside its book, or give the new book another name");
      }
    }
    sweep(path);
    auto unfinished = begin_book(path);
    if (!unfinished) return Failed{unfinished.error()};
    const auto now =
        std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
    write_book(unfinished->path(), {random_uuid(), random_tag(), now.time_since_epoch().count()});
    return put_book(*unfinished);
  });
  if (!made) sweep(path);  // SQLite's own files beside what was not finished
  return made;
}

}  // namespace rb::store
