#include "store/keep/note_keeper.h"

#include <mutex>
#include <utility>

#include "store/book/connection.h"
#include "store/book/head_note.h"
#include "store/book/row_reader.h"
#include "store/file/side_thread.h"

namespace rb::store {

namespace {
constexpr Seconds kLooksEvery{1.5};  // looks at least so often, told of a tap or not
}

struct NoteKeeper::Inside {
  const std::filesystem::path book;
  const std::shared_ptr<PlainDisk> given;

  mutable std::mutex mutex;
  Status status;                  // under the mutex
  std::function<void()> changed;  // the same; empty once nobody is to be told

  // The note's thread alone:
  std::optional<RowReader> rows;
  std::optional<HeadNoteFile> file;

  Inside(std::filesystem::path at, std::shared_ptr<PlainDisk> disk, std::function<void()> told)
      : book(std::move(at)), given(std::move(disk)), changed(std::move(told)) {}

  std::optional<Seconds> turn() {
    const auto done = write();
    const std::lock_guard lock(mutex);
    const bool news = status.trouble.has_value() == done.has_value();
    status.trouble = done ? std::nullopt : std::optional(done.error());
    if (done) status.noted = *done;
    if (news && changed) changed();
    return kLooksEvery;
  }

  /// What the book has is what it acknowledged: its own hash there, not one told by another.
  Result<std::int64_t> write() {
    if (!rows) {
      auto opened = RowReader::open(book);
      if (!opened) return Failed{opened.error()};
      rows = std::move(*opened);
    }
    auto last = rows->last();
    if (!last) {
      rows.reset();
      return last;
    }
    const auto hash_at = [this](std::int64_t seq) { return rows->hash_at(seq); };
    if (!file) {
      auto opened =
          HeadNoteFile::open(given ? *given : plain_disk(), book, rows->name().uuid, hash_at);
      if (!opened) return Failed{opened.error()};
      file = std::move(*opened);
    } else if (status_noted() == *last) {
      return last;
    }
    const auto hash = rows->hash_at(*last);
    if (!hash) return Failed{hash.error()};
    if (!*hash) return fail(Error::Kind::book, book.string(), "its last event is not to be read");
    if (const auto put = file->write(*last, **hash); !put) {
      if (!file->in_place()) file.reset();  // else the same of its two lines is written again
      return Failed{put.error()};
    }
    return last;
  }

  std::optional<std::int64_t> status_noted() {
    const std::lock_guard lock(mutex);
    return status.noted;
  }
};

NoteKeeper::NoteKeeper(std::filesystem::path book, std::shared_ptr<PlainDisk> disk,
                       std::function<void()> changed)
    : inside_(std::make_shared<Inside>(settled(book), std::move(disk), std::move(changed))),
      thread_(std::make_unique<SideThread>(
          [inside = inside_](bool /*stopping*/) { return inside->turn(); })) {}

NoteKeeper::~NoteKeeper() {
  thread_.reset();
  const std::lock_guard lock(inside_->mutex);
  inside_->changed = {};
}

void NoteKeeper::note_kept() {
  thread_->wake();
}

NoteKeeper::Status NoteKeeper::status() const {
  const std::lock_guard lock(inside_->mutex);
  return inside_->status;
}

}  // namespace rb::store
