// Photos while the screens are open: the camera's folder is looked at, and the photo that was
// chosen is kept beside the book, on a thread of its own: a card that hangs must not hold the
// drawing. What names it goes into the book only once the file is on the disk.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "base/path.h"
#include "pour/log/event.h"
#include "screens/seen/photos_seen.h"
#include "screens/view/intents.h"
#include "store/file/side_thread.h"

namespace rb {

/// A photo kept beside a book: the event that names it, for the book's pour.
Result<event::Photo> take_photo(const Path& book, const Path& original, const EventId& target);

class PhotoDesk {
 public:
  /// `changed` is called on another thread whenever seen() or taken() did.
  void begin(const Path& book, const Path& camera, std::function<void()> changed);
  /// FindPhotos, and TakePhoto for a pour; anything else is left alone. Returns at once.
  void act(const screens::Intent& wish, const PourId& pour);
  /// None before begin() and after end().
  [[nodiscard]] std::optional<screens::PhotosSeen> seen() const;
  /// Photos kept for a pour since the last call, to be put into its book. Those of another pour
  /// wait until it is on the screen again.
  std::vector<screens::KeepEvent> taken(const PourId& pour);
  void end();

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
  std::unique_ptr<store::SideThread> thread_;
};

}  // namespace rb
