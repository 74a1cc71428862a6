#include "store/writer_lock.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>
#include <utility>

namespace rb::store {

namespace {

/// The number the holder wrote, or nothing readable.
std::string holder(int file) {
  std::array<char, 16> text{};
  const auto size = pread(file, text.data(), text.size(), 0);
  std::string number;
  for (ssize_t i = 0; i < size && text[static_cast<std::size_t>(i)] >= '0' &&
                      text[static_cast<std::size_t>(i)] <= '9';
       ++i) {
    number += text[static_cast<std::size_t>(i)];
  }
  return number.empty() ? "" : fmt::format(" (process {})", number);
}

}  // namespace

Result<WriterLock> WriterLock::take(const std::filesystem::path& book) {
  const auto path = book.string() + ".lock";
  const int file = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (file < 0) {
    return fail(Error::Kind::book, book.string(),
                fmt::format("the book cannot be opened for writing: {}",
                            std::generic_category().message(errno)),
                "Check that its folder exists and may be written to");
  }
  WriterLock lock(file);
  if (flock(file, LOCK_EX | LOCK_NB) != 0) {
    if (errno == EWOULDBLOCK) {
      return fail(Error::Kind::book, book.string(),
                  fmt::format("The book is open in another Risebook{}", holder(file)),
                  "Close it there first, or open the book here for reading only");
    }
    return fail(Error::Kind::book, book.string(),
                fmt::format("the book cannot be locked for writing: {}",
                            std::generic_category().message(errno)),
                "Keep the book on a disk of this tablet");
  }
  // Only for the words above; the lock holds without it.
  const auto number = fmt::format("{}\n", getpid());
  if (ftruncate(file, 0) == 0 && pwrite(file, number.data(), number.size(), 0) < 0) {
    return lock;
  }
  return lock;
}

WriterLock::WriterLock(WriterLock&& other) noexcept : file_(std::exchange(other.file_, -1)) {}

WriterLock& WriterLock::operator=(WriterLock&& other) noexcept {
  std::swap(file_, other.file_);
  return *this;
}

WriterLock::~WriterLock() {
  if (file_ >= 0) close(file_);
}

}  // namespace rb::store
