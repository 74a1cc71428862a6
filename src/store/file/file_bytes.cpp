#include "store/file/file_bytes.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstddef>
#include <memory>
#include <system_error>

namespace rb::store {

namespace {

void check(int code) {
  if (code != SQLITE_OK) throw SQLite::Exception(sqlite3_errstr(code), code);
}

struct Closer {
  void operator()(sqlite3_file* file) const { file->pMethods->xClose(file); }
};

}  // namespace

std::filesystem::path log_of(const std::filesystem::path& path) {
  return path.string() + "-wal";
}

std::vector<unsigned char> file_bytes(const std::filesystem::path& path) {
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(path, ignored)) return {};
  auto* const layer = sqlite3_vfs_find(nullptr);
  const std::unique_ptr<const char, void (*)(const char*)> name(
      sqlite3_create_filename(path.c_str(), "", "", 0, nullptr), sqlite3_free_filename);
  if (!layer || !name) check(SQLITE_NOMEM);
  std::vector<std::max_align_t> room(
      static_cast<std::size_t>(layer->szOsFile) / sizeof(std::max_align_t) + 1);
  auto* const opened = reinterpret_cast<sqlite3_file*>(room.data());
  int given = 0;
  check(
      layer->xOpen(layer, name.get(), opened, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, &given));
  const std::unique_ptr<sqlite3_file, Closer> file(opened);
  sqlite3_int64 size = 0;
  check(file->pMethods->xFileSize(file.get(), &size));
  std::vector<unsigned char> bytes(static_cast<std::size_t>(std::max<sqlite3_int64>(size, 0)));
  constexpr std::size_t kPart = std::size_t{1} << 20U;
  constexpr std::size_t kSector = 4096;
  for (std::size_t at = 0; at < bytes.size(); at += kPart) {
    const auto part = std::min(kPart, bytes.size() - at);
    const auto read = [&](std::size_t from, std::size_t count) {
      return file->pMethods->xRead(file.get(), bytes.data() + from, static_cast<int>(count),
                                   static_cast<sqlite3_int64>(from));
    };
    if (const int code = read(at, part); code == SQLITE_OK || code == SQLITE_IOERR_SHORT_READ) {
      continue;
    }
    // A bad place on the disk costs what lies in it, not what lies around it.
    std::size_t good = 0;
    for (std::size_t from = at; from < at + part; from += kSector) {
      const auto count = std::min(kSector, at + part - from);
      if (read(from, count) == SQLITE_OK) {
        ++good;
      } else {
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(from), count, 0);
      }
    }
    if (good == 0 && part == bytes.size()) check(SQLITE_IOERR_READ);
  }
  return bytes;
}

}  // namespace rb::store
