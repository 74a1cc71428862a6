#include "store/file/in_place.h"

#include <sys/stat.h>

namespace rb::store {

std::optional<FileMark> mark_of(const std::filesystem::path& path) {
  // Asked of its name only: the file itself is never opened but through SQLite.
  struct stat found {};
  if (stat(path.c_str(), &found) != 0) return {};
  return FileMark{found.st_dev, found.st_ino};
}

}  // namespace rb::store
