#include "store/book/older_book.h"

#include <SQLiteCpp/Backup.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <string>
#include <system_error>

#include "store/file/migrations.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr int kMostNames = 1000;
constexpr const char* kNotUpdated =
    "the book is of an older version and could not be copied before it is brought up to date";

void copy_all(SQLite::Database& to, SQLite::Database& from) {
  SQLite::Backup backup(to, from);
  const int code = backup.executeStep(-1);
  if (code != SQLITE_DONE) throw SQLite::Exception(sqlite3_errstr(code), code);
}

Failed failed(const fs::path& path, int error) {
  return fail(trouble_of(error), path.string(),
              fmt::format("{}: {}", kNotUpdated, std::generic_category().message(error)),
              "Check that its folder may be written to and has room; the book stands as it was");
}

/// A file of that name made by this call and by no one else, or the next name that is free.
Result<fs::path> fresh_file(const std::string& name) {
  for (int n = 1; n < kMostNames; ++n) {
    const fs::path path = n == 1 ? name : fmt::format("{}-{}", name, n);
    const int file = open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (file >= 0) {
      close(file);
      return path;
    }
    if (errno != EEXIST) return failed(path, errno);
  }
  return failed(name, EEXIST);
}

/// Gives `from` a free name that begins with `name`; never takes another file's.
Result<fs::path> put(const fs::path& from, const std::string& name) {
  for (int n = 1; n < kMostNames; ++n) {
    const fs::path path = n == 1 ? name : fmt::format("{}-{}", name, n);
    if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) == 0) {
      return path;
    }
    if (errno == EINVAL || errno == ENOSYS) {  // not on this disk
      if (link(from.c_str(), path.c_str()) == 0) {
        unlink(from.c_str());
        return path;
      }
    }
    if (errno != EEXIST) return failed(path, errno);
  }
  return failed(name, EEXIST);
}

Result<void> sync_folder_of(const fs::path& path) {
  const int folder = open(path.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (folder < 0) return failed(path, errno);
  const int code = fsync(folder) == 0 ? 0 : errno;
  close(folder);
  return code == 0 ? Result<void>{} : failed(path, code);
}

/// A file of ours that goes unless it is kept.
class Passing {
 public:
  explicit Passing(fs::path path) : path_(std::move(path)) {}
  Passing(const Passing&) = delete;
  Passing& operator=(const Passing&) = delete;
  ~Passing() {
    if (path_.empty()) return;
    for (const char* part : {"", "-journal", "-wal", "-shm"}) {
      unlink((path_.string() + part).c_str());
    }
  }
  [[nodiscard]] const fs::path& path() const { return path_; }
  void moved(fs::path to) { path_ = std::move(to); }
  void keep() { path_.clear(); }

 private:
  fs::path path_;
};

}  // namespace

Result<void> bring_up_to_date(SQLite::Database& database, const fs::path& path, int from) {
  const auto name = fmt::format("{}.before-{}", path.string(), schema_version());
  const auto unfinished = fresh_file(name + ".unfinished");
  if (!unfinished) return Failed{unfinished.error()};
  Passing copy(*unfinished);
  {
    SQLite::Database beside(copy.path().string(), SQLite::OPEN_READWRITE);
    beside.exec("PRAGMA synchronous = FULL");
    copy_all(beside, database);
  }
  const auto put_there = put(copy.path(), name);
  if (!put_there) return Failed{put_there.error()};
  copy.moved(*put_there);
  if (auto synced = sync_folder_of(path); !synced) return synced;
  database.exec("PRAGMA trusted_schema = ON");  // the step's own triggers fill its tables
  SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
  migrate(database, from);
  try {
    whole.commit();
  } catch (const SQLite::Exception& thrown) {
    // But for a full disk its end may lie in the log and come back: the copy stays.
    if (thrown.getErrorCode() != SQLITE_FULL) copy.keep();
    throw;
  }
  copy.keep();
  return {};
}

std::unique_ptr<SQLite::Database> up_to_date_in_memory(SQLite::Database& database, int from) {
  auto memory = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE);
  copy_all(*memory, database);
  SQLite::Transaction whole(*memory);
  migrate(*memory, from);
  whole.commit();
  return memory;
}

}  // namespace rb::store
