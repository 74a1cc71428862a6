#include "store/file/plain_disk.h"

#include <fcntl.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <utility>

namespace rb::store {

namespace {

namespace fs = std::filesystem;

tl::unexpected<std::error_code> failed(int code = errno) {
  return tl::unexpected(std::error_code(code, std::generic_category()));
}

class SystemFile : public PlainFile {
 public:
  SystemFile(int handle, fs::path path) : handle_(handle), path_(std::move(path)) {}
  ~SystemFile() override { close(handle_); }

  Done<std::string> read(std::uint64_t from, std::size_t size) override {
    std::string bytes(size, '\0');
    std::size_t have = 0;
    while (have < size) {
      const auto got =
          pread(handle_, bytes.data() + have, size - have, static_cast<off_t>(from + have));
      if (got < 0 && errno == EINTR) continue;
      if (got < 0) return failed();
      if (got == 0) break;
      have += static_cast<std::size_t>(got);
    }
    bytes.resize(have);
    return bytes;
  }

  Done<void> write(std::uint64_t at, std::string_view bytes) override {
    while (!bytes.empty()) {
      const auto put = pwrite(handle_, bytes.data(), bytes.size(), static_cast<off_t>(at));
      if (put < 0 && errno == EINTR) continue;
      if (put < 0) return failed();
      at += static_cast<std::uint64_t>(put);
      bytes.remove_prefix(static_cast<std::size_t>(put));
    }
    return {};
  }

  Done<void> sync() override {
    if (fdatasync(handle_) != 0) return failed();
    return {};
  }

  Done<std::uint64_t> size() override {
    struct stat is {};
    if (fstat(handle_, &is) != 0) return failed();
    return static_cast<std::uint64_t>(is.st_size);
  }

  /// Pages still to be written are; the others go from memory, so that a write that failed once,
  /// and is taken for done since, does not read back.
  void forget() {
    (void)fdatasync(handle_);  // whether it could or not, the next sync will tell
    (void)posix_fadvise(handle_, 0, 0, POSIX_FADV_DONTNEED);
  }

  bool in_place() override {
    struct stat is {};
    struct stat named {};
    return fstat(handle_, &is) == 0 && lstat(path_.c_str(), &named) == 0 &&
           is.st_dev == named.st_dev && is.st_ino == named.st_ino;
  }

 private:
  int handle_;
  fs::path path_;
};

class SystemDisk : public PlainDisk {
 public:
  Done<std::unique_ptr<PlainFile>> make(const fs::path& path) override {
    return opened(path, O_RDWR | O_CREAT | O_EXCL);
  }
  Done<std::unique_ptr<PlainFile>> open(const fs::path& path) override {
    auto file = opened(path, O_RDWR);
    if (file) static_cast<SystemFile&>(**file).forget();
    return file;
  }
  Done<std::unique_ptr<PlainFile>> open_to_read(const fs::path& path) override {
    return opened(path, O_RDONLY);
  }

  Done<void> rename(const fs::path& from, const fs::path& to) override {
    if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return {};
    if (errno != EINVAL && errno != ENOSYS) return failed();
    // A file system that cannot promise it: looked at first, then renamed.
    struct stat is {};
    if (lstat(to.c_str(), &is) == 0) return failed(EEXIST);
    if (::rename(from.c_str(), to.c_str()) != 0) return failed();
    return {};
  }

  Done<void> sync_folder(const fs::path& folder) override {
    const fs::path at = folder.empty() ? fs::path{"."} : folder;
    const int handle = ::open(at.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) return failed();
    const int code = fsync(handle) == 0 ? 0 : errno;
    close(handle);
    // Some file systems have nothing of the kind to do.
    return code == 0 || code == EINVAL ? Done<void>{} : failed(code);
  }

 private:
  static Done<std::unique_ptr<PlainFile>> opened(const fs::path& path, int how) {
    // O_NONBLOCK: a pipe by that name is refused below, not waited for.
    const int handle = ::open(path.c_str(), how | O_NOFOLLOW | O_CLOEXEC | O_NONBLOCK, 0600);
    if (handle < 0) return failed();
    auto file = std::make_unique<SystemFile>(handle, path);
    struct stat is {};
    if (fstat(handle, &is) != 0) return failed();
    if (!S_ISREG(is.st_mode)) return failed(EINVAL);
    if (is.st_nlink != 1) return failed(EMLINK);
    return file;
  }
};

}  // namespace

bool not_ours(const std::error_code& error) {
  constexpr std::array kSuch{std::errc::too_many_symbolic_link_levels, std::errc::too_many_links,
                             std::errc::invalid_argument, std::errc::is_a_directory,
                             std::errc::no_such_device_or_address};
  return std::any_of(kSuch.begin(), kSuch.end(), [&](std::errc such) { return error == such; });
}

PlainDisk& plain_disk() {
  static auto* const disk = new SystemDisk;  // never gone: a side thread may outlive main()
  return *disk;
}

Done<std::string> read_all(PlainFile& file, std::uint64_t most) {
  const auto size = file.size();
  if (!size) return tl::unexpected(size.error());
  if (*size > most) return failed(EFBIG);
  return file.read(0, static_cast<std::size_t>(*size));
}

}  // namespace rb::store
