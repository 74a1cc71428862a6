// The note of the head (BOOK.head): the number and hash of the last event that was acknowledged, in
// a small file beside the book, synced at each tap. A book that lost its end still has a whole
// chain; this note tells of what is missing. Two lines written in turn, each with a check of its
// own and in a block of its own: a power cut spoils the one being written only.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/file/chain.h"
#include "store/file/plain_disk.h"

namespace rb::store {

struct HeadNote {
  std::string uuid;  ///< of the book
  std::int64_t seq = 0;
  Hash hash{};
  bool operator==(const HeadNote&) const = default;
};

/// What a note's file tells.
struct NoteRead {
  enum class State {
    none,
    unreadable,  ///< the disk did not answer: it may be whole
    damaged,     ///< or not a file of ours
    whole,
  };
  State state = State::none;
  HeadNote note;             ///< when whole: the later of the two
  bool one_damaged = false;  ///< one of its two lines; as after a power cut
};

std::filesystem::path note_path(const std::filesystem::path& book);
NoteRead read_note(PlainDisk& disk, const std::filesystem::path& file);

class HeadNoteFile {
 public:
  /// The stored hash at a number of the book, none where it has no such row.
  using HashAt = std::function<Result<std::optional<Hash>>(std::int64_t)>;

  /// Goes on with the note beside the book, or begins one. A note that tells of events which this
  /// book does not have, or of another book, or nothing readable, is evidence: it is kept under a
  /// numbered name (BOOK.head.1 and so on) and a new one begun.
  static Result<HeadNoteFile> open(PlainDisk& disk, const std::filesystem::path& book,
                                   const std::string& uuid, const HashAt& at);

  [[nodiscard]] bool in_place() const { return file_->in_place(); }
  /// On the disk when this returns. After a failure the other line still stands: write again.
  Result<void> write(std::int64_t seq, const Hash& hash);

 private:
  HeadNoteFile() = default;
  std::filesystem::path path_;
  std::string uuid_;
  std::unique_ptr<PlainFile> file_;
  int next_ = 0;  ///< which of the two is written next
};

/// A note beside a book: the present one, and those kept as evidence.
struct NoteBeside {
  std::string file;  ///< its name without the folder
  NoteRead read;
  bool present = false;
};
std::vector<NoteBeside> read_notes(PlainDisk& disk, const std::filesystem::path& book);

/// What the notes beside a book say against it, in plain sentences; none when they agree. Also how
/// far they vouch for it.
struct NoteVerdict {
  std::vector<std::string> faults;
  std::optional<std::int64_t> vouched;  ///< the book has all up to this number, as acknowledged
  bool damaged = false;                 ///< a note is there that tells nothing, or cannot be read
};
/// `last`: number of the book's last event.
Result<NoteVerdict> judge_notes(const std::vector<NoteBeside>& notes, const BookName& name,
                                std::int64_t last, const HeadNoteFile::HashAt& at);

}  // namespace rb::store
