// One writer to a book: an advisory lock on a file of its own beside it (BOOK.lock).
//
// Why a file of its own: SQLite's locks on the book belong to the process and are lost when any
// handle on that file is closed, so the book itself is never opened but through SQLite; and a
// transaction held open would not let each tap be committed. The system lets go of this lock when
// its process ends, however it ends: nothing is left to clean up. Readers do not ask for it.
#pragma once

#include <filesystem>

#include "base/result.h"

namespace rb::store {

class WriterLock {
 public:
  /// Takes the lock at once or says which process has it; `book` need not exist yet. A file there
  /// that is not ours (a link, other names, other words) is left as it is and told of.
  static Result<WriterLock> take(const std::filesystem::path& book);

  WriterLock() = default;  ///< holds nothing
  WriterLock(WriterLock&& other) noexcept;
  WriterLock& operator=(WriterLock&& other) noexcept;
  ~WriterLock();

 private:
  explicit WriterLock(int file) : file_(file) {}
  int file_ = -1;
};

}  // namespace rb::store
