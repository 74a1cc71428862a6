#include "fault_vfs.h"

#include <sqlite3.h>
#include <sys/stat.h>

#include <algorithm>
#include <atomic>
#include <fstream>
#include <map>
#include <mutex>
#include <optional>
#include <sstream>
#include <thread>
#include <utility>
#include <vector>

namespace rb::faults {

namespace {

constexpr std::size_t kSector = 512;

/// A write, or (without bytes) a cut to the length `at`.
struct Change {
  std::size_t at = 0;
  std::optional<std::string> bytes;
};

void apply(std::string& image, const Change& change) {
  if (!change.bytes) {
    image.resize(std::min(image.size(), change.at));
    return;
  }
  image.resize(std::max(image.size(), change.at + change.bytes->size()));
  std::copy(change.bytes->begin(), change.bytes->end(),
            image.begin() + static_cast<std::ptrdiff_t>(change.at));
}

/// What is known of a file on the disk (by its inode, which a new name does not change).
struct Tracked {
  std::string synced;
  std::vector<Change> since;
  bool new_name = false;  ///< its first sync syncs the folder too, as SQLite has it
};

struct Gone {
  std::string path, synced;
};

struct Disk {
  sqlite3_vfs vfs{};
  sqlite3_vfs* real = nullptr;
  Fault fault = Fault::none;
  int left = 0;
  bool lasting = false, struck = false;
  std::map<ino_t, Tracked> files;
  std::vector<Gone> gone;  ///< removed, but the folder was not synced since
} disk;
std::recursive_mutex gate;  ///< a book has several threads
std::atomic<int> a_sync_ms{0};

struct File {
  sqlite3_file base;
  Tracked* tracked;  ///< null for files that no crash outlives
  [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File& file(sqlite3_file* f) {
  return *reinterpret_cast<File*>(f);
}
sqlite3_file* real(sqlite3_file* f) {
  return file(f).real();
}

std::string bytes_of(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream all;
  all << stream.rdbuf();
  return all.str();
}

std::optional<ino_t> inode(const std::string& path) {
  struct stat info {};
  return stat(path.c_str(), &info) == 0 ? std::optional(info.st_ino) : std::nullopt;
}

/// Whether this call, which `kinds` can meet, is to fail.
bool fails(std::initializer_list<Fault> kinds) {
  if (std::find(kinds.begin(), kinds.end(), disk.fault) == kinds.end()) return false;
  if (disk.struck && (disk.lasting || disk.fault == Fault::power)) return true;
  if (disk.left == 0 || --disk.left > 0) return false;
  disk.struck = true;
  return true;
}

int write(sqlite3_file* f, const void* bytes, int size, sqlite3_int64 at) {
  const std::lock_guard through(gate);
  const bool bad = fails({Fault::write, Fault::full, Fault::power});
  if (bad && disk.fault == Fault::power) return SQLITE_IOERR_WRITE;
  const int written = bad ? size / 2 : size;
  if (auto* const tracked = file(f).tracked) {
    tracked->since.push_back(
        {static_cast<std::size_t>(at),
         std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(written))});
  }
  const int code = real(f)->pMethods->xWrite(real(f), bytes, written, at);
  if (!bad) return code;
  return disk.fault == Fault::full ? SQLITE_FULL : SQLITE_IOERR_WRITE;
}

int truncate(sqlite3_file* f, sqlite3_int64 size) {
  const std::lock_guard through(gate);
  if (fails({Fault::write, Fault::power})) return SQLITE_IOERR_TRUNCATE;
  if (auto* const tracked = file(f).tracked) {
    tracked->since.push_back({static_cast<std::size_t>(size), std::nullopt});
  }
  return real(f)->pMethods->xTruncate(real(f), size);
}

int sync(sqlite3_file* f, int /*how*/) {  // nothing goes to the real disk: the tests are fast
  std::this_thread::sleep_for(std::chrono::milliseconds(a_sync_ms));
  const std::lock_guard through(gate);
  if (fails({Fault::sync, Fault::power})) return SQLITE_IOERR_FSYNC;
  if (auto* const tracked = file(f).tracked) {
    for (const auto& change : tracked->since) apply(tracked->synced, change);
    tracked->since.clear();
    if (std::exchange(tracked->new_name, false)) disk.gone.clear();
  }
  return SQLITE_OK;
}

int read(sqlite3_file* f, void* bytes, int size, sqlite3_int64 at) {
  const std::lock_guard through(gate);
  if (fails({Fault::read})) return SQLITE_IOERR_READ;
  return real(f)->pMethods->xRead(real(f), bytes, size, at);
}

int close(sqlite3_file* f) {
  return real(f)->pMethods->xClose(real(f));
}

// Passed on as they are; without the memory-mapped reads of version 3.
const sqlite3_io_methods kMethods{
    .iVersion = 2,
    .xClose = close,
    .xRead = read,
    .xWrite = write,
    .xTruncate = truncate,
    .xSync = sync,
    .xFileSize = [](auto* f, auto* size) { return real(f)->pMethods->xFileSize(real(f), size); },
    .xLock = [](auto* f, int how) { return real(f)->pMethods->xLock(real(f), how); },
    .xUnlock = [](auto* f, int how) { return real(f)->pMethods->xUnlock(real(f), how); },
    .xCheckReservedLock =
        [](auto* f, int* held) { return real(f)->pMethods->xCheckReservedLock(real(f), held); },
    .xFileControl = [](auto* f, int op,
                       void* arg) { return real(f)->pMethods->xFileControl(real(f), op, arg); },
    .xSectorSize = [](auto* f) { return real(f)->pMethods->xSectorSize(real(f)); },
    .xDeviceCharacteristics =
        [](auto* f) { return real(f)->pMethods->xDeviceCharacteristics(real(f)); },
    .xShmMap =
        [](auto* f, int page, int size, int extend, auto** at) {
          return real(f)->pMethods->xShmMap(real(f), page, size, extend, at);
        },
    .xShmLock = [](auto* f, int offset, int n,
                   int how) { return real(f)->pMethods->xShmLock(real(f), offset, n, how); },
    .xShmBarrier = [](auto* f) { real(f)->pMethods->xShmBarrier(real(f)); },
    .xShmUnmap = [](auto* f, int remove) { return real(f)->pMethods->xShmUnmap(real(f), remove); },
    .xFetch = nullptr,
    .xUnfetch = nullptr,
};

int open(sqlite3_vfs* /*vfs*/, const char* name, sqlite3_file* f, int flags, int* out) {
  const std::lock_guard through(gate);
  f->pMethods = nullptr;
  constexpr int kKept = SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL;
  const bool there = name && inode(name);
  const int code = disk.real->xOpen(disk.real, name, real(f), flags, out);
  if (code != SQLITE_OK) return code;
  f->pMethods = &kMethods;
  file(f).tracked = nullptr;
  if (name && (flags & kKept) != 0) {
    const auto [at, fresh] = disk.files.try_emplace(inode(name).value_or(0));
    if (fresh) at->second.synced = bytes_of(name);
    if (!there) at->second.new_name = (flags & (SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL)) != 0;
    file(f).tracked = &at->second;
  }
  return SQLITE_OK;
}

int remove(sqlite3_vfs* /*vfs*/, const char* name, int sync_folder) {
  const std::lock_guard through(gate);
  if (fails({Fault::power})) return SQLITE_IOERR_DELETE;
  if (const auto node = inode(name); node && disk.files.contains(*node)) {
    if (!sync_folder) disk.gone.push_back({name, disk.files.at(*node).synced});
    disk.files.erase(*node);
  }
  return disk.real->xDelete(disk.real, name, sync_folder);
}

bool chance(std::mt19937& random) {
  return std::bernoulli_distribution(0.5)(random);
}

/// The changes not synced, as far as they reached the disk.
std::string after_power_loss(const Tracked& tracked, FaultyDisk::Left left, std::mt19937& random) {
  auto image = tracked.synced;
  for (const auto& change : tracked.since) {
    if (left == FaultyDisk::Left::nothing) break;
    if (left == FaultyDisk::Left::everything || !change.bytes) {
      if (left == FaultyDisk::Left::everything || chance(random)) apply(image, change);
      continue;
    }
    if (chance(random)) continue;  // none of it
    const bool torn = chance(random);
    for (std::size_t from = 0; from < change.bytes->size();) {
      const auto size =
          std::min(kSector - (change.at + from) % kSector, change.bytes->size() - from);
      if (!torn || chance(random)) {
        apply(image, {change.at + from, change.bytes->substr(from, size)});
      }
      from += size;
    }
  }
  return image;
}

void put(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

}  // namespace

FaultyDisk::FaultyDisk() {
  disk = Disk{};
  disk.real = sqlite3_vfs_find(nullptr);
  disk.vfs = *disk.real;
  disk.vfs.zName = "faulty";
  disk.vfs.szOsFile = static_cast<int>(sizeof(File)) + disk.real->szOsFile;
  disk.vfs.xOpen = open;
  disk.vfs.xDelete = remove;
  sqlite3_vfs_register(&disk.vfs, 1);
}

void FaultyDisk::slow(std::chrono::milliseconds a_sync) {
  a_sync_ms = static_cast<int>(a_sync.count());
}

FaultyDisk::~FaultyDisk() {
  a_sync_ms = 0;
  sqlite3_vfs_unregister(&disk.vfs);
  sqlite3_vfs_register(disk.real, 1);
}

void FaultyDisk::fail(Fault fault, int nth, bool lasting) {
  const std::lock_guard through(gate);
  disk.fault = fault;
  disk.left = nth;
  disk.lasting = lasting;
  disk.struck = false;
}

void FaultyDisk::heal() {
  const std::lock_guard through(gate);
  disk.fault = Fault::none;
}

bool FaultyDisk::struck() const {
  const std::lock_guard through(gate);
  return disk.struck;
}

void FaultyDisk::lose_power(const std::filesystem::path& folder, Left left, std::mt19937& random) {
  heal();
  for (const auto& each : disk.gone) {
    if (left == Left::nothing || (left == Left::chance && chance(random))) {
      if (!std::filesystem::exists(each.path)) put(each.path, each.synced);
    }
  }
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const auto path = entry.path().string();
    if (path.ends_with("-shm")) {
      std::filesystem::remove(path);
    } else if (const auto known = disk.files.find(inode(path).value_or(0));
               known != disk.files.end()) {
      put(path, after_power_loss(known->second, left, random));
    }
  }
  disk.files.clear();
  disk.gone.clear();
}

}  // namespace rb::faults
