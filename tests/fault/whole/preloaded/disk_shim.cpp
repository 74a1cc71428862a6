// A disk that is slow, fills, dies or goes away, for a program that knows nothing of it: preloaded
// (LD_PRELOAD), it stands between the program and the C library for whatever lies under the folder
// RISEBOOK_DISK. The file RISEBOOK_DISK_SAYS says how the disk is, and may change while the program
// runs; words and numbers, of which each may be left out:
//   sync-ms N      a sync takes N ms; changed meanwhile, the new figure holds for the sync begun
//   room N         N bytes can still be added to files, then the disk is full
//   works N        N more calls are done, then the disk is dead
//   dead           whatever is asked of it fails with an I/O error
//   gone           the same, and nothing under the folder is to be found by name any more
// Missing or empty: the disk is well. What is written through a memory map is not seen.
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <time.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <mutex>

namespace {

struct Says {
  long sync_ms = 0;
  long long room = -1;  ///< no end
  long works = -1;
  bool dead = false, gone = false;
};

std::mutex changing;
Says says;
timespec read_at{};
off_t read_size = -1;

void take(const char* text) {
  says = {};
  const auto number = [&](const char* word, long long otherwise) {
    const char* at = std::strstr(text, word);
    return at ? std::strtoll(at + std::strlen(word), nullptr, 10) : otherwise;
  };
  says.sync_ms = static_cast<long>(number("sync-ms", 0));
  says.room = number("room", -1);
  says.works = static_cast<long>(number("works", -1));
  says.gone = std::strstr(text, "gone") != nullptr;
  says.dead = says.gone || std::strstr(text, "dead") != nullptr;
}

/// How the disk is now. By system calls only: none of them comes back here.
void look() {
  const char* path = std::getenv("RISEBOOK_DISK_SAYS");
  struct stat now {};
  if (!path || syscall(SYS_newfstatat, AT_FDCWD, path, &now, 0) != 0) {
    now = {};
    now.st_size = -1;
  }
  if (now.st_size == read_size && now.st_mtim.tv_sec == read_at.tv_sec &&
      now.st_mtim.tv_nsec == read_at.tv_nsec) {
    return;
  }
  read_size = now.st_size;
  read_at = now.st_mtim;
  char text[256] = "";
  const long fd = read_size < 0 ? -1 : syscall(SYS_openat, AT_FDCWD, path, O_RDONLY | O_CLOEXEC);
  if (fd >= 0) {
    syscall(SYS_read, fd, text, sizeof text - 1);
    syscall(SYS_close, fd);
  }
  take(text);
}

bool under(const char* path) {
  const char* folder = std::getenv("RISEBOOK_DISK");
  return folder && path && std::strncmp(path, folder, std::strlen(folder)) == 0;
}

bool under(int fd) {
  char link[64], path[4096];
  std::snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  const long size = syscall(SYS_readlinkat, AT_FDCWD, link, path, sizeof path - 1);
  if (size <= 0) return false;
  path[size] = '\0';
  return under(path);
}

/// The error of a call on this disk, or 0. `counts`: one of those that `works` counts.
int fault(bool counts = true) {
  const int before = errno;
  const std::lock_guard lock(changing);
  look();
  errno = before;
  if (says.works == 0) says.dead = true;
  if (counts && says.works > 0) --says.works;
  return says.dead ? EIO : 0;
}

bool gone() {
  const std::lock_guard lock(changing);
  look();
  return says.gone;
}

/// Of `size` bytes that would add `added` to a file, how many can be written; takes them off.
std::size_t fits(std::size_t size, std::size_t added) {
  const std::lock_guard lock(changing);
  if (says.room < 0) return size;
  const auto room = static_cast<std::size_t>(says.room);
  const auto taken = std::min(room, added);
  says.room -= static_cast<long long>(taken);
  return size - added + taken;
}

void wait_for_sync() {
  timespec step{0, 2'000'000};
  for (long waited = 0;; waited += 2) {
    {
      const std::lock_guard lock(changing);
      look();
      if (waited >= says.sync_ms) return;
    }
    nanosleep(&step, nullptr);
  }
}

template <class F>
F real(F, const char* name) {
  return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}
#define REAL(name) real(static_cast<decltype(&name)>(nullptr), #name)

template <class T>
T failed(int error) {
  errno = error;
  return static_cast<T>(-1);
}

std::size_t added_by(int fd, std::size_t size, off_t at) {
  struct stat now {};
  if (syscall(SYS_fstat, fd, &now) != 0) return size;
  const auto end = static_cast<off_t>(at + static_cast<off_t>(size));
  return end > now.st_size ? std::min(size, static_cast<std::size_t>(end - now.st_size)) : 0;
}

off_t here(int fd) {
  if ((fcntl(fd, F_GETFL) & O_APPEND) != 0) {
    struct stat now {};
    return syscall(SYS_fstat, fd, &now) == 0 ? now.st_size : 0;
  }
  return static_cast<off_t>(syscall(SYS_lseek, fd, 0, SEEK_CUR));
}

template <class Write>
ssize_t write_at(Write write, int fd, const void* data, std::size_t size, off_t at) {
  if (!under(fd)) return write(data, size);
  if (const int error = fault()) return failed<ssize_t>(error);
  const auto part = fits(size, added_by(fd, size, at));
  return part == 0 && size > 0 ? failed<ssize_t>(ENOSPC) : write(data, part);
}

template <class Sync>
int sync_slowly(Sync sync, int fd) {
  if (!under(fd)) return sync(fd);
  wait_for_sync();
  if (const int error = fault()) return failed<int>(error);
  return sync(fd);
}

template <class Open>
int open_there(Open open, const char* path, int flags) {
  if (!under(path)) return open();
  if (gone()) return failed<int>((flags & O_CREAT) != 0 ? EIO : ENOENT);
  if (const int error = fault()) return failed<int>(error);
  return open();
}

template <class Look>
int look_up(Look look, const char* path) {
  return under(path) && gone() ? failed<int>(ENOENT) : look();
}

template <class Change>
int change(Change change, bool concerned) {
  if (concerned) {
    if (const int error = fault()) return failed<int>(error);
  }
  return change();
}

}  // namespace

#define MODE_OF(flags)                            \
  mode_t mode = 0;                                \
  if (((flags) & (O_CREAT | __O_TMPFILE)) != 0) { \
    va_list rest;                                 \
    va_start(rest, flags);                        \
    mode = va_arg(rest, mode_t);                  \
    va_end(rest);                                 \
  }

extern "C" {

int open(const char* path, int flags, ...) {
  MODE_OF(flags)
  return open_there([&] { return REAL(open)(path, flags, mode); }, path, flags);
}
int open64(const char* path, int flags, ...) {
  MODE_OF(flags)
  return open_there([&] { return REAL(open64)(path, flags, mode); }, path, flags);
}
int openat(int folder, const char* path, int flags, ...) {
  MODE_OF(flags)
  return open_there([&] { return REAL(openat)(folder, path, flags, mode); }, path, flags);
}
ssize_t read(int fd, void* data, size_t size) {
  if (under(fd)) {
    if (const int error = fault(false)) return failed<ssize_t>(error);
  }
  return REAL(read)(fd, data, size);
}
ssize_t pread(int fd, void* data, size_t size, off_t at) {
  if (under(fd)) {
    if (const int error = fault(false)) return failed<ssize_t>(error);
  }
  return REAL(pread)(fd, data, size, at);
}
ssize_t pread64(int fd, void* data, size_t size, off64_t at) {
  return pread(fd, data, size, at);
}
ssize_t write(int fd, const void* data, size_t size) {
  const auto write_real = [&](const void* from, size_t part) {
    return REAL(write)(fd, from, part);
  };
  return under(fd) ? write_at(write_real, fd, data, size, here(fd)) : write_real(data, size);
}
ssize_t writev(int fd, const iovec* parts, int count) {
  if (!under(fd)) return REAL(writev)(fd, parts, count);
  ssize_t all = 0;
  for (int i = 0; i < count; ++i) {
    const ssize_t part = write(fd, parts[i].iov_base, parts[i].iov_len);
    if (part < 0) return all > 0 ? all : part;
    all += part;
    if (static_cast<size_t>(part) < parts[i].iov_len) break;
  }
  return all;
}
ssize_t pwrite(int fd, const void* data, size_t size, off_t at) {
  return write_at([&](const void* from, size_t part) { return REAL(pwrite)(fd, from, part, at); },
                  fd, data, size, at);
}
ssize_t pwrite64(int fd, const void* data, size_t size, off64_t at) {
  return pwrite(fd, data, size, at);
}
int fsync(int fd) {
  return sync_slowly(REAL(fsync), fd);
}
int fdatasync(int fd) {
  return sync_slowly(REAL(fdatasync), fd);
}
int ftruncate(int fd, off_t size) noexcept {
  return change([&] { return REAL(ftruncate)(fd, size); }, under(fd));
}
int ftruncate64(int fd, off64_t size) noexcept {
  return ftruncate(fd, size);
}
int unlink(const char* path) noexcept {
  return change([&] { return REAL(unlink)(path); }, under(path));
}
int rename(const char* from, const char* to) noexcept {
  return change([&] { return REAL(rename)(from, to); }, under(from) || under(to));
}
int link(const char* from, const char* to) noexcept {
  return change([&] { return REAL(link)(from, to); }, under(from) || under(to));
}
int mkdir(const char* path, mode_t mode) noexcept {
  return change([&] { return REAL(mkdir)(path, mode); }, under(path));
}
int stat(const char* path, struct stat* out) noexcept {
  return look_up([&] { return REAL(stat)(path, out); }, path);
}
int stat64(const char* path, struct stat64* out) noexcept {
  return look_up([&] { return REAL(stat64)(path, out); }, path);
}
int lstat(const char* path, struct stat* out) noexcept {
  return look_up([&] { return REAL(lstat)(path, out); }, path);
}
int lstat64(const char* path, struct stat64* out) noexcept {
  return look_up([&] { return REAL(lstat64)(path, out); }, path);
}
int access(const char* path, int how) noexcept {
  return look_up([&] { return REAL(access)(path, how); }, path);
}

}  // extern "C"
