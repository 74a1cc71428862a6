#include "store/photos/carry.h"

#include <fmt/format.h>

#include <algorithm>

#include "store/photos/photo.h"

namespace rb::store {

namespace {

constexpr std::size_t kHashDigits = 64;

// Ours by their names; anything else in the folder is somebody else's.
std::vector<Path> photos_in(const Path& folder) {
  std::vector<Path> photos;
  std::error_code error;
  for (std::filesystem::directory_iterator entry{folder, error}, end; !error && entry != end;
       entry.increment(error)) {
    const Path& file = entry->path();
    const std::string stem = file.stem().string();
    const Path kind = file.extension();
    if (stem.size() == kHashDigits && is_hex(stem) && (kind == ".jpg" || kind == ".png")) {
      photos.push_back(file);
    }
  }
  std::sort(photos.begin(), photos.end());
  return photos;
}

}  // namespace

Result<Carried> carry_photos(const Path& from, const Path& to, std::set<std::string>* known,
                             const std::function<bool()>& go_on) {
  Carried carried;
  for (const Path& photo : photos_in(from)) {
    const std::string name = photo.filename().string();
    if (known != nullptr && known->contains(name)) continue;
    if (go_on && !go_on()) return carried;
    const Hex hash{photo.stem().string()};
    const auto read = read_photo(photo);
    if (!read || read->sha256 != hash) {
      carried.faults.push_back(fmt::format("photo {} is altered or cannot be read", name));
      continue;
    }
    if (look_at_photo(to, hash) != PhotoState::whole) {
      if (const auto kept = keep_photo(photo, to); !kept) return Failed{kept.error()};
      ++carried.brought;
    }
    if (known != nullptr) known->insert(name);
  }
  return carried;
}

std::vector<std::string> bring_photos(const Path& from, const VerifyReport& book, const Path& to) {
  std::vector<std::string> lacks;
  if (const auto carried = carry_photos(from, to); !carried) {
    lacks.push_back("Photos could not be brought: " + to_text(carried.error()));
  }
  auto faults = photo_faults(book.photos, to);
  lacks.insert(lacks.end(), faults.begin(), faults.end());
  return lacks;
}

std::vector<std::string> photo_faults(const std::vector<PhotoNamed>& named, const Path& folder) {
  std::vector<std::string> faults;
  for (const PhotoNamed& photo : named) {
    const PhotoState state = look_at_photo(folder, photo.sha256);
    if (state == PhotoState::whole) continue;
    faults.push_back(fmt::format("Photo {} of event {} is {}", photo.name, photo.event.text,
                                 state == PhotoState::missing ? "missing" : "altered"));
  }
  return faults;
}

}  // namespace rb::store
