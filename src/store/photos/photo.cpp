#include "store/photos/photo.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>

#include "base/unfinished.h"
#include "store/file/chain.h"

namespace rb::store {

namespace {

using namespace std::string_view_literals;

constexpr std::string_view kJpegBegins = "\xFF\xD8\xFF"sv;
constexpr std::string_view kJpegEnds = "\xFF\xD9"sv;
constexpr std::string_view kPngBegins = "\x89PNG\r\n\x1A\n"sv;
constexpr std::string_view kPngEnds = "IEND\xAE\x42\x60\x82"sv;
constexpr mode_t kOwn = 0600;
constexpr mode_t kOwnFolder = 0700;

class OpenFile {
 public:
  explicit OpenFile(const Path& file)
      : file_(open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY)) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (file_ >= 0) close(file_);
  }
  [[nodiscard]] int get() const { return file_; }

 private:
  int file_;
};

Failed cannot_read(const Path& file, int error) {
  return fail(Error::Kind::input, file.string(),
              {said("cannot be read: {why}"), {{"why", std::string{std::strerror(error)}}}},
              said("Plug in where it lies, or choose another photo"));
}

Result<std::string> read_bytes(const Path& file) {
  const OpenFile in(file);
  if (in.get() < 0) return cannot_read(file, errno);
  struct stat seen {};
  if (fstat(in.get(), &seen) != 0) return cannot_read(file, errno);
  if (!S_ISREG(seen.st_mode)) {
    return fail(Error::Kind::input, file.string(), said("is no file"), said("Choose a photo"));
  }
  std::string bytes;
  std::array<char, 1 << 16> room{};
  for (;;) {
    const ssize_t got = read(in.get(), room.data(), room.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return cannot_read(file, errno);
    if (got == 0) return bytes;
    bytes.append(room.data(), static_cast<std::size_t>(got));
    if (static_cast<std::int64_t>(bytes.size()) > kMostPhotoBytes) {
      return fail(Error::Kind::input, file.string(), said("is larger than 50 MiB"),
                  said("Let the camera make smaller photos, or choose another"));
    }
  }
}

// A file that is still being written has no end.
std::optional<PhotoKind> kind_of(std::string_view bytes, bool& whole) {
  if (bytes.starts_with(kJpegBegins)) {
    whole = bytes.rfind(kJpegEnds) != std::string_view::npos;
    return PhotoKind::jpeg;
  }
  if (bytes.starts_with(kPngBegins)) {
    whole = bytes.rfind(kPngEnds) != std::string_view::npos;
    return PhotoKind::png;
  }
  return std::nullopt;
}

Hex sha256_of(std::string_view bytes) {
  ready_crypto();
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()),
                     bytes.size());
  return hex_of(hash);
}

Path named(const Path& folder, const Hex& sha256, PhotoKind kind) {
  return folder / (sha256.digits + (kind == PhotoKind::jpeg ? ".jpg" : ".png"));
}

// A name goes into an event as it is, unless it is no text.
std::string name_of(const Path& file, PhotoKind kind) {
  std::string name = file.filename().string();
  if (nlohmann::json::accept("\"" + name + "\"")) return name;
  return kind == PhotoKind::jpeg ? "photo.jpg" : "photo.png";
}

// The folder alone, never the one above it: a stick that is gone is not made anew on the tablet.
bool stands(const Path& folder) {
  if (mkdir(folder.c_str(), kOwnFolder) == 0) return sync_folder(folder.parent_path());
  return errno == EEXIST;
}

}  // namespace

Result<PhotoRead> read_photo(const Path& file) {
  auto bytes = read_bytes(file);
  if (!bytes) return Failed{bytes.error()};
  bool whole = false;
  const auto kind = kind_of(*bytes, whole);
  if (!kind) {
    return fail(Error::Kind::input, file.string(), said("is neither a JPEG nor a PNG"),
                said("Choose a photo of one of these kinds"));
  }
  if (!whole) {
    return fail(Error::Kind::input, file.string(), said("is cut off: its end is missing"),
                said("Wait until the camera has written it, or choose another"));
  }
  Hex hash = sha256_of(*bytes);
  return PhotoRead{std::move(*bytes), *kind, std::move(hash)};
}

Path photos_folder(const Path& beside, const std::string& tag) {
  return beside / ("photos-" + tag);
}

Result<PhotoKept> keep_photo(const Path& original, const Path& folder) {
  const auto read = read_photo(original);
  if (!read) return Failed{read.error()};
  PhotoKept kept{.sha256 = read->sha256,
                 .name = name_of(original, read->kind),
                 .bytes = static_cast<int>(read->bytes.size()),
                 .file = named(folder, read->sha256, read->kind)};
  if (look_at_photo(folder, read->sha256) == PhotoState::whole) return kept;
  if (!stands(folder)) {
    return fail(Error::Kind::input, folder.string(),
                {said("cannot be made: {why}"), {{"why", std::string{std::strerror(errno)}}}},
                said("Make room, or give this user the right to write there"));
  }
  auto unfinished = Unfinished::beside(kept.file, kOwn);
  if (!unfinished) return Failed{unfinished.error()};
  if (const auto written = unfinished->write(read->bytes); !written) {
    return Failed{written.error()};
  }
  if (const auto put = unfinished->put(Place::replaced); !put) return Failed{put.error()};
  return kept;
}

PhotoLook read_kept_photo(const Path& folder, const Hex& sha256) {
  PhotoLook look;
  for (const PhotoKind kind : {PhotoKind::jpeg, PhotoKind::png}) {
    const Path file = named(folder, sha256, kind);
    std::error_code error;
    if (!std::filesystem::exists(std::filesystem::symlink_status(file, error))) continue;
    auto bytes = read_bytes(file);
    if (bytes && sha256_of(*bytes) == sha256) return {PhotoState::whole, std::move(*bytes)};
    look.state = PhotoState::altered;
  }
  return look;
}

PhotoState look_at_photo(const Path& folder, const Hex& sha256) {
  return read_kept_photo(folder, sha256).state;
}

}  // namespace rb::store
