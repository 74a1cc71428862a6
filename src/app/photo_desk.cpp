#include "app/photo_desk.h"

#include <deque>
#include <mutex>
#include <utility>

#include "app/camera_folder.h"
#include "store/book/row_reader.h"
#include "store/photos/photo.h"

namespace rb {

namespace {

constexpr std::size_t kMostListed = 48;

using PhotosState = screens::PhotosSeen::State;

}  // namespace

struct PhotoDesk::Shared {
  struct Wish {
    screens::TakePhoto photo;
    PourId pour;
  };
  struct Kept {
    screens::KeepEvent event;
    PourId pour;
  };
  const Path book, camera;
  const std::function<void()> changed;
  mutable std::mutex mutex;
  screens::PhotosSeen seen;
  bool look = false;
  bool over = false;  ///< nobody is told any more
  std::deque<Wish> wishes;
  std::vector<Kept> kept;

  Shared(Path of, Path from, std::function<void()> tell)
      : book(std::move(of)), camera(std::move(from)), changed(std::move(tell)) {}

  void tell() {
    const std::lock_guard lock(mutex);
    if (!over && changed) changed();
  }
  bool look_for_photos() {
    {
      const std::lock_guard lock(mutex);
      if (!std::exchange(look, false)) return false;
    }
    auto files = newest_photos(camera, kMostListed);
    const std::lock_guard lock(mutex);
    const bool other = !seen.looked || files != seen.files;
    seen.files = std::move(files);
    seen.looked = true;
    return other;
  }
  bool take_one() {
    std::optional<Wish> wish;
    {
      const std::lock_guard lock(mutex);
      if (wishes.empty()) return false;
      wish = std::move(wishes.front());
      wishes.pop_front();
    }
    const auto photo = take_photo(book, wish->photo.path, wish->photo.target);
    const std::lock_guard lock(mutex);
    if (photo) {
      kept.push_back({{*photo, wish->photo.at}, wish->pour});
      seen.state = PhotosState::taken;
    } else {
      seen.state = PhotosState::failed;
      seen.says = words_of(photo.error(), wish->photo.voice);
    }
    return true;
  }
  std::optional<Seconds> turn() {
    bool news = look_for_photos();
    while (take_one()) news = true;
    if (news) tell();
    return std::nullopt;
  }
};

Result<event::Photo> take_photo(const Path& book, const Path& original, const EventId& target) {
  auto rows = store::RowReader::open(book);
  if (!rows) return Failed{rows.error()};
  const Path folder =
      store::photos_folder(std::filesystem::absolute(book).parent_path(), rows->name().tag);
  const auto kept = store::keep_photo(original, folder);
  if (!kept) return Failed{kept.error()};
  event::Photo photo;
  photo.target = target;
  photo.sha256 = kept->sha256;
  photo.name = kept->name;
  photo.bytes = kept->bytes;
  return photo;
}

void PhotoDesk::begin(const Path& book, const Path& camera, std::function<void()> changed) {
  end();
  shared_ = std::make_shared<Shared>(book, camera, std::move(changed));
  shared_->seen.folder = camera.string();
  thread_ = std::make_unique<store::SideThread>(
      [shared = shared_](bool stopping) -> std::optional<Seconds> {
        return stopping ? std::nullopt : shared->turn();
      });
}

void PhotoDesk::act(const screens::Intent& wish, const PourId& pour) {
  if (!shared_) return;
  {
    const std::lock_guard lock(shared_->mutex);
    if (std::holds_alternative<screens::FindPhotos>(wish)) {
      shared_->look = true;
    } else if (const auto* photo = std::get_if<screens::TakePhoto>(&wish)) {
      shared_->wishes.push_back({*photo, pour});
      shared_->seen.state = PhotosState::taking;
      shared_->seen.name = Path{photo->path}.filename().string();
      shared_->seen.says.clear();
    } else {
      return;
    }
  }
  thread_->wake();
}

std::optional<screens::PhotosSeen> PhotoDesk::seen() const {
  if (!shared_) return std::nullopt;
  const std::lock_guard lock(shared_->mutex);
  return shared_->seen;
}

std::vector<screens::KeepEvent> PhotoDesk::taken(const PourId& pour) {
  std::vector<screens::KeepEvent> events;
  if (!shared_) return events;
  const std::lock_guard lock(shared_->mutex);
  auto& kept = shared_->kept;
  for (auto one = kept.begin(); one != kept.end();) {
    if (one->pour != pour) {
      ++one;
      continue;
    }
    events.push_back(std::move(one->event));
    one = kept.erase(one);
  }
  return events;
}

void PhotoDesk::end() {
  if (shared_) {
    const std::lock_guard lock(shared_->mutex);
    shared_->over = true;
  }
  thread_.reset();
  shared_.reset();
}

}  // namespace rb
