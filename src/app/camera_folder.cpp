#include "app/camera_folder.h"

#include <sys/stat.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <fstream>

#include "app/settings_file.h"

namespace rb {

namespace {

constexpr std::size_t kMostLooked = 20000;  // entries of a folder: more is no camera's

// XDG_PICTURES_DIR="$HOME/Pictures" in user-dirs.dirs.
Path xdg_pictures() {
  const Path folder = settings_path().parent_path().parent_path();
  std::ifstream in{folder / "user-dirs.dirs"};
  const std::string key = "XDG_PICTURES_DIR=\"";
  std::string line;
  while (std::getline(in, line)) {
    if (line.rfind(key, 0) != 0) continue;
    std::string value = line.substr(key.size());
    value.resize(std::min(value.size(), value.find('"')));
    const std::string home = "$HOME";
    if (value.rfind(home, 0) == 0) {
      const char* at = std::getenv("HOME");
      value.replace(0, home.size(), at == nullptr ? "" : at);
    }
    if (Path{value}.is_absolute()) return value;
  }
  return {};
}

bool of_a_photo(const Path& name) {
  std::string kind = name.extension().string();
  std::transform(kind.begin(), kind.end(), kind.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return (kind == ".jpg" || kind == ".jpeg" || kind == ".png") &&
         name.filename().string().front() != '.';
}

void look_into(const Path& folder, int deep, std::vector<screens::PhotoFile>& found) {
  std::error_code error;
  std::size_t looked = 0;
  for (std::filesystem::directory_iterator entry{folder, error}, end;
       !error && entry != end && looked < kMostLooked; entry.increment(error), ++looked) {
    const Path& file = entry->path();
    struct stat seen {};
    if (stat(file.c_str(), &seen) != 0) continue;
    if (S_ISDIR(seen.st_mode)) {
      if (deep > 0 && file.filename().string().front() != '.') look_into(file, deep - 1, found);
    } else if (S_ISREG(seen.st_mode) && of_a_photo(file)) {
      const auto ms = std::chrono::seconds{seen.st_mtim.tv_sec} +
                      std::chrono::milliseconds{seen.st_mtim.tv_nsec / 1'000'000};
      found.push_back({file.string(), file.filename().string(), seen.st_size,
                       Moment{std::chrono::duration_cast<std::chrono::milliseconds>(ms)}});
    }
  }
}

}  // namespace

Path camera_folder(const Path& settings) {
  if (Path set = folder_set(settings, kCameraFolder); !set.empty()) return set;
  if (Path pictures = xdg_pictures(); !pictures.empty()) return pictures;
  const char* home = std::getenv("HOME");
  return home == nullptr || *home != '/' ? Path{} : Path{home} / "Pictures";
}

std::vector<screens::PhotoFile> newest_photos(const Path& folder, std::size_t most) {
  std::vector<screens::PhotoFile> found;
  if (folder.empty()) return found;
  look_into(folder, 1, found);
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
    return a.made != b.made ? a.made > b.made : a.path < b.path;
  });
  if (found.size() > most) found.resize(most);
  return found;
}

}  // namespace rb
