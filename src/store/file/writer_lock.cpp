#include "store/file/writer_lock.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

namespace rb::store {

namespace {

constexpr std::string_view kOurs = "risebook ";
constexpr std::size_t kLongest = 32;  // "risebook 4194304\n" and to spare

/// Whether these are the words of a lock file of ours: none yet, or the number of the process that
/// wrote them (bare, as earlier versions had it).
bool ours(std::string_view text) {
  if (text.starts_with(kOurs)) text.remove_prefix(kOurs.size());
  if (text.ends_with('\n')) text.remove_suffix(1);
  return text.size() <= 10 && text.find_first_not_of("0123456789") == std::string_view::npos;
}

std::string words_of(int file) {
  std::array<char, kLongest + 1> text{};
  const auto size = pread(file, text.data(), text.size(), 0);
  return size < 0 ? std::string(kLongest + 1, '?')
                  : std::string(text.data(), static_cast<std::size_t>(size));
}

/// The number the holder wrote, or nothing readable.
std::string holder(int file) {
  std::string text = words_of(file);
  if (!ours(text)) return "";
  if (text.starts_with(kOurs)) text.erase(0, kOurs.size());
  while (!text.empty() && text.back() == '\n') text.pop_back();
  return text.empty() ? "" : fmt::format(" (process {})", text);
}

Failed in_the_way(const std::string& path, const char* what) {
  return fail(BookTrouble::in_the_way, path,
              fmt::format("stands where the book's lock belongs and {}", what),
              "It was left as it is; move it away, or open the book for reading only");
}

/// Nothing, when this is a plain file of ours under one name.
std::optional<Failed> foreign(int file, const std::string& path) {
  struct stat info {};
  if (fstat(file, &info) != 0 || !S_ISREG(info.st_mode)) return in_the_way(path, "is no file");
  if (info.st_nlink > 1) return in_the_way(path, "has other names too");
  if (!ours(words_of(file))) return in_the_way(path, "was not made by Risebook");
  return std::nullopt;
}

}  // namespace

Result<WriterLock> WriterLock::take(const std::filesystem::path& book) {
  const auto path = book.string() + ".lock";
  const int file = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0600);
  if (file < 0) {
    const int error = errno;
    if (error == ELOOP) return in_the_way(path, "is a link to another file");
    if (error == EISDIR) return in_the_way(path, "is a folder");
    return fail(trouble_of(error), book.string(),
                fmt::format("the book cannot be opened for writing: {}",
                            std::generic_category().message(error)),
                "Check that its folder exists and may be written to");
  }
  WriterLock lock(file);
  if (const auto stranger = foreign(file, path)) return *stranger;
  if (flock(file, LOCK_EX | LOCK_NB) != 0) {
    if (errno == EWOULDBLOCK) {
      return fail(BookTrouble::second_start, book.string(),
                  fmt::format("The book is open in another Risebook{}", holder(file)),
                  "Close it there first, or open the book here for reading only");
    }
    return fail(BookTrouble::no_answer, book.string(),
                fmt::format("the book cannot be locked for writing: {}",
                            std::generic_category().message(errno)),
                "Keep the book on a disk of this tablet");
  }
  // Only for the words above; the lock holds without it. Written over, then cut: on a full disk
  // nothing is lost but the number.
  const auto number = fmt::format("{}{}\n", kOurs, getpid());
  const auto size = static_cast<ssize_t>(number.size());
  if (pwrite(file, number.data(), number.size(), 0) == size && ftruncate(file, size) != 0) {
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
