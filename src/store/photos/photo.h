// Photos of a book: each a file beside it, named by the hash of its bytes, which an event in the
// book holds (event::Photo). They lie in one folder a book tag, so that copies and mirrors in the
// same folder share them. The file a photo is taken from is only ever read.
#pragma once

#include <cstdint>
#include <string>

#include "base/hex.h"
#include "base/path.h"
#include "base/result.h"

namespace rb::store {

/// 50 MiB: what the event takes, and more than a tablet's camera makes.
inline constexpr std::int64_t kMostPhotoBytes = 52428800;

enum class PhotoKind { jpeg, png };

struct PhotoRead {
  std::string bytes;
  PhotoKind kind = PhotoKind::jpeg;
  Hex sha256;
};
/// A file whole, by its first and last bytes a JPEG or a PNG. Error (input): it is neither, it is
/// cut off, too large, or cannot be read.
Result<PhotoRead> read_photo(const Path& file);

/// "photos-K3F7Q" in the folder that a book, a copy of it or its mirror stands in.
Path photos_folder(const Path& beside, const std::string& tag);

struct PhotoKept {
  Hex sha256;
  std::string name;  ///< of the file it was taken from, without its folder
  int bytes = 0;
  Path file;
};
/// Puts a photo into a folder (made if missing, not the one above it), whole and synced, under its
/// hash. What stands there whole already is left; what stands there altered is put right. Error
/// (input): nothing was put.
Result<PhotoKept> keep_photo(const Path& original, const Path& folder);

enum class PhotoState { whole, missing, altered };
struct PhotoLook {
  PhotoState state = PhotoState::missing;
  std::string bytes{};  ///< of a whole one
};
/// A kept photo, read and hashed.
PhotoLook read_kept_photo(const Path& folder, const Hex& sha256);
PhotoState look_at_photo(const Path& folder, const Hex& sha256);

}  // namespace rb::store
