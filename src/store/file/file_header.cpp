#include "store/file/file_header.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <memory>
#include <vector>

namespace rb::store {

namespace {

constexpr std::size_t kSize = 100;  // https://www.sqlite.org/fileformat.html, section 1.3
constexpr std::size_t kWriteVersionAt = 18;
constexpr int kLastVersion = 2;  // of a file with a log beside it
constexpr std::size_t kUserVersionAt = 60, kApplicationIdAt = 68;
using HeaderBytes = std::array<unsigned char, kSize>;

int big_endian(const HeaderBytes& bytes, std::size_t at) {
  std::uint32_t number = 0;
  for (std::size_t i = 0; i < 4; ++i) number = number << 8U | bytes[at + i];
  return static_cast<int>(number);
}

void need(int code) {
  if (code != SQLITE_OK) throw SQLite::Exception(sqlite3_errstr(code), code);
}

}  // namespace

std::optional<FileHeader> read_header(const std::filesystem::path& path) {
  auto* const layer = sqlite3_vfs_find(nullptr);
  const std::unique_ptr<const char, void (*)(const char*)> name(
      sqlite3_create_filename(path.c_str(), "", "", 0, nullptr), sqlite3_free_filename);
  if (!layer || !name) need(SQLITE_NOMEM);
  std::vector<std::max_align_t> room(
      static_cast<std::size_t>(layer->szOsFile) / sizeof(std::max_align_t) + 1);
  auto* const file = reinterpret_cast<sqlite3_file*>(room.data());
  int given = 0;
  need(layer->xOpen(layer, name.get(), file, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, &given));
  HeaderBytes bytes{};
  const int code = file->pMethods->xRead(file, bytes.data(), kSize, 0);
  file->pMethods->xClose(file);
  if (code == SQLITE_IOERR_SHORT_READ) return std::nullopt;
  need(code);
  if (std::memcmp(bytes.data(), "SQLite format 3", 16) != 0) return std::nullopt;
  return FileHeader{big_endian(bytes, kApplicationIdAt), big_endian(bytes, kUserVersionAt),
                    bytes[kWriteVersionAt]};
}

std::optional<std::string> header_fault(const std::filesystem::path& path) {
  const auto header = read_header(path);
  if (!header || header->write_version <= kLastVersion) return std::nullopt;
  return "The first bytes of the file forbid writing to it; Risebook never wrote them so";
}

}  // namespace rb::store
