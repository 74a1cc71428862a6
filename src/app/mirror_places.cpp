#include "app/mirror_places.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace rb {

namespace {

std::optional<dev_t> disk_of(const Path& path) {
  struct stat seen {};
  if (stat(path.empty() ? "." : path.c_str(), &seen) != 0) return std::nullopt;
  return seen.st_dev;
}

}  // namespace

std::vector<Path> places_roots() {
  std::vector<Path> roots;
  if (const char* user = std::getenv("USER"); user != nullptr && *user != '\0') {
    roots = {Path{"/media"} / user, Path{"/run/media"} / user};
  }
  roots.emplace_back("/mnt");
  return roots;
}

std::vector<screens::MirrorPlace> mirror_places(const std::vector<Path>& roots, const Path& book) {
  const auto of_book = disk_of(book.parent_path());
  std::vector<screens::MirrorPlace> places;
  for (const Path& root : roots) {
    std::error_code error;
    for (std::filesystem::directory_iterator entry{root, error}, end; !error && entry != end;
         entry.increment(error)) {
      const Path& folder = entry->path();
      std::error_code unseen;
      if (!std::filesystem::is_directory(folder, unseen)) continue;
      if (access(folder.c_str(), W_OK | X_OK) != 0) continue;
      places.push_back({folder.string(), of_book && disk_of(folder) == of_book});
    }
  }
  std::sort(places.begin(), places.end(),
            [](const auto& a, const auto& b) { return a.folder < b.folder; });
  return places;
}

}  // namespace rb
