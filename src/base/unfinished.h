// A file in the making, under a name of our own beside its place, until it is whole. Nothing of
// anybody else is written to, followed or removed, and nobody meets half a file.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace rb {

/// What putting a file in its place may do to what stands there.
enum class Place {
  must_be_free,  ///< refuses where anything stands, a link to nothing too
  replaced,      ///< takes the place of a file; of a link itself, not of what it points to
};

class Unfinished {
 public:
  /// Makes an empty file that was not there before: ".NAME.<16 random hex digits>.part" in the
  /// folder of `to`. `mode` as for open(2), cut by the umask. Error (input) naming `to`.
  static Result<Unfinished> beside(const std::filesystem::path& to, mode_t mode = 0666);

  Unfinished(Unfinished&& other) noexcept;
  Unfinished& operator=(Unfinished&& other) noexcept;
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;
  ~Unfinished();  ///< removes what was not put

  /// Its name for now, for a library that writes files by name.
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  Result<void> write(std::string_view bytes);
  /// Syncs the file, gives it its name and syncs the folder: on the disk when this returns.
  Result<void> put(Place place);

 private:
  Unfinished(std::filesystem::path to, std::filesystem::path path, int file);
  [[nodiscard]] Failed cannot(const char* what) const;
  std::filesystem::path to_, path_;
  int file_ = -1;
};

/// Whether a name is one that Unfinished::beside(to) gives.
bool unfinished_name(const std::filesystem::path& name, const std::filesystem::path& to);

/// The names in a folder are on the disk when this returns true.
bool sync_folder(const std::filesystem::path& folder);

/// Makes a folder and those above it that are missing, each with `mode` and synced into the one
/// above. What stands already is left as it is. False: errno says why.
bool make_folders(const std::filesystem::path& folder, mode_t mode);

}  // namespace rb
