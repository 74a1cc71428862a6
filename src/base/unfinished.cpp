#include "base/unfinished.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <system_error>
#include <utility>

namespace rb {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kEnd = ".part";
constexpr std::size_t kDigits = 16;
constexpr std::size_t kLongestStem = 200;  // a name may have 255 bytes
constexpr int kTries = 8;

std::string begin_of(const fs::path& to) {
  return "." + to.filename().string().substr(0, kLongestStem) + ".";
}

fs::path folder_of(const fs::path& to) {
  return to.has_parent_path() ? to.parent_path() : fs::path{"."};
}

// Gives a file its name unless something has it: by the kernel, or, on file systems that cannot, by
// a second name for the moment.
int rename_to_free(const fs::path& from, const fs::path& to) {
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return -1;
  if (::link(from.c_str(), to.c_str()) != 0) return -1;
  return ::unlink(from.c_str());
}

}  // namespace

Unfinished::Unfinished(fs::path to, fs::path path, int file)
    : to_(std::move(to)), path_(std::move(path)), file_(file) {}

Unfinished::Unfinished(Unfinished&& other) noexcept
    : to_(std::move(other.to_)),
      path_(std::exchange(other.path_, {})),
      file_(std::exchange(other.file_, -1)) {}

Unfinished& Unfinished::operator=(Unfinished&& other) noexcept {
  std::swap(to_, other.to_);
  std::swap(path_, other.path_);
  std::swap(file_, other.file_);
  return *this;
}

Unfinished::~Unfinished() {
  if (file_ >= 0) ::close(file_);
  if (!path_.empty()) ::unlink(path_.c_str());
}

Failed Unfinished::cannot(const char* what) const {
  return Failed{Error{Error::Kind::input, to_.string(),
                      fmt::format("{}: {}", what, std::generic_category().message(errno)),
                      "Choose a folder that is there, may be written to and has room",
                      trouble_of(errno)}};
}

Result<Unfinished> Unfinished::beside(const fs::path& to, mode_t mode) {
  Unfinished made{to, {}, -1};
  for (int tries = 0; tries < kTries && made.file_ < 0; ++tries) {
    std::uint64_t random = 0;
    if (::getrandom(&random, sizeof random, 0) != sizeof random) break;
    const fs::path path = folder_of(to) / fmt::format("{}{:016x}{}", begin_of(to), random, kEnd);
    made.file_ = ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
    if (made.file_ >= 0) {
      made.path_ = path;
    } else if (errno != EEXIST) {
      break;
    }
  }
  if (made.file_ < 0) return made.cannot("cannot be written");
  return made;
}

Result<void> Unfinished::write(std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t wrote = ::write(file_, bytes.data(), bytes.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return cannot("could not be written whole");
    bytes.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return {};
}

Result<void> Unfinished::put(Place place) {
  if (::fsync(file_) != 0) return cannot("could not be written whole");
  const int done =
      place == Place::replaced ? ::rename(path_.c_str(), to_.c_str()) : rename_to_free(path_, to_);
  if (done != 0) {
    if (errno != EEXIST) return cannot("could not take its name");
    return Failed{Error{Error::Kind::input, to_.string(), "is there already",
                        "Nothing is written over: choose another name", BookTrouble::in_the_way}};
  }
  path_.clear();
  if (!sync_folder(folder_of(to_))) return cannot("the disk did not confirm the new file");
  return {};
}

bool unfinished_name(const fs::path& name, const fs::path& to) {
  const std::string text = name.filename().string();
  const std::string begin = begin_of(to);
  if (text.size() != begin.size() + kDigits + kEnd.size()) return false;
  if (!text.starts_with(begin) || !text.ends_with(kEnd)) return false;
  const auto digits = std::string_view{text}.substr(begin.size(), kDigits);
  return digits.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

bool sync_folder(const fs::path& folder) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return false;
  // A file system that knows no sync of a folder (EINVAL) has nothing more to give.
  const bool done = ::fsync(handle) == 0 || errno == EINVAL;
  ::close(handle);
  return done;
}

bool make_folders(const fs::path& folder, mode_t mode) {
  if (folder.empty()) return true;
  std::error_code error;
  if (fs::is_directory(folder, error)) return true;
  if (folder.has_parent_path() && folder.parent_path() != folder &&
      !make_folders(folder.parent_path(), mode)) {
    return false;
  }
  if (::mkdir(folder.c_str(), mode) != 0 && errno != EEXIST) return false;
  if (!fs::is_directory(folder, error)) {
    errno = ENOTDIR;
    return false;
  }
  (void)sync_folder(folder_of(folder));  // what it does not confirm shows when a file is put there
  return true;
}

}  // namespace rb
