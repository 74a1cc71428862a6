#include "store/copies/copy_book.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <thread>

#include "base/moment.h"
#include "store/book/connection.h"
#include "store/book/logbook.h"
#include "store/book/row_reader.h"
#include "store/file/entry_now.h"
#include "store/file/new_book.h"
#include "store/file/trouble.h"
#include "store/photos/carry.h"
#include "store/photos/photo.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr int kPagesAtOnce = 256;
constexpr const char* kCopying = "the book could not be copied";

/// Copies page by page within one view of the book: taps kept meanwhile do not begin it anew.
Result<void> copy_pages(SQLite::Database& book, const fs::path& to, const Progress& progress) {
  SQLite::Transaction view(book);
  book.execAndGet("SELECT seq FROM head");
  SQLite::Database copy(to.string(), SQLite::OPEN_READWRITE);
  {
    SQLite::Backup backup(copy, book);
    for (int code = SQLITE_OK; code != SQLITE_DONE;) {
      code = backup.executeStep(kPagesAtOnce);
      if (code == SQLITE_BUSY || code == SQLITE_LOCKED) {
        std::this_thread::sleep_for(std::chrono::milliseconds{20});
      }
      const double all = std::max(1, backup.getTotalPageCount());
      if (progress && !progress(1 - backup.getRemainingPageCount() / all)) {
        return fail(Error::Kind::book, to.string(), "the copy was stopped; nothing is left of it");
      }
    }
  }
  // One file that stands alone, wherever it is read; writing to it brings the log back.
  copy.exec("PRAGMA journal_mode = DELETE");
  return {};
}

fs::path name_for(const fs::path& folder, const fs::path& book, const BookName& name,
                  std::int64_t last) {
  auto moment = to_text(entry_now().wall).substr(0, 19);  // to the second
  std::erase_if(moment, [](char c) { return c == ':' || c == '-'; });
  const auto stem = fmt::format("{}-{}-{}-{}", book.stem().string(), name.tag, last, moment);
  std::error_code error;
  for (int n = 1;; ++n) {
    auto path = folder / (n == 1 ? stem + ".risebook" : fmt::format("{}-{}.risebook", stem, n));
    if (!fs::exists(fs::symlink_status(path, error))) return path;
  }
}

/// What is wrong with a book that stands alone, or its report.
Result<VerifyReport> looked_through(const fs::path& path) {
  auto book = Logbook::open(path, Access::read);
  if (!book) return Failed{book.error()};
  auto report = book->verify();
  if (report && !report->sound()) {
    return fail(Error::Kind::book, path.string(), report->faults.front(),
                "risebook verify tells all; risebook rescue saves what is whole");
  }
  return report;
}

}  // namespace

Result<CopyReport> copy_book(const fs::path& book, const fs::path& folder,
                             const Progress& progress) {
  const auto from = settled(book);
  auto reader = RowReader::open(from);
  if (!reader) return Failed{reader.error()};
  const auto last = reader->last();
  if (!last) return Failed{last.error()};
  const auto name = reader->name();
  return guarded(folder.string(), kCopying, [&]() -> Result<CopyReport> {
    (void)make_folders(folder, 0700);  // one that could not be made shows when the copy is begun
    const auto to = name_for(settled(folder), from, name, *last);
    auto unfinished = begin_book(to);
    if (!unfinished) return Failed{unfinished.error()};
    {
      auto database = connect(from, Access::read);
      if (!database) return Failed{database.error()};
      if (auto done = copy_pages(**database, unfinished->path(), progress); !done) {
        return Failed{done.error()};
      }
    }
    const auto report = looked_through(unfinished->path());
    if (!report) {
      auto error = report.error();
      error.where = from.string();
      error.what = {said("no copy was made: {why}"), {{"why", Clause{error.what}}}};
      return Failed{std::move(error)};
    }
    // Before it has its name: a copy that is there has its photos, or says which it lacks.
    const auto lacks = bring_photos(photos_folder(from.parent_path(), name.tag), *report,
                                    photos_folder(to.parent_path(), name.tag));
    if (auto done = put_book(*unfinished); !done) return Failed{done.error()};
    return CopyReport{to, static_cast<std::int64_t>(report->events), report->head_hash, lacks};
  });
}

}  // namespace rb::store
