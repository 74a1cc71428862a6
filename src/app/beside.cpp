#include "app/beside.h"

#include <utility>

#include "store/entry_now.h"

namespace rb {

void Beside::begin(const Path& book, const Path& mirror) {
  const std::lock_guard lock(mutex_);
  note_ = std::make_unique<store::NoteKeeper>(book);
  store::MirrorKeeper::Hooks hooks;
  hooks.now = [] { return entry_now().wall; };
  mirror_ = std::make_unique<store::MirrorKeeper>(book, mirror, std::move(hooks));
}

void Beside::kept(const BookHead& head) {
  const std::lock_guard lock(mutex_);
  if (note_) note_->note_kept();
  if (mirror_) mirror_->note_kept(head.seq, entry_now().wall);
}

void Beside::end() {
  std::unique_ptr<store::NoteKeeper> note;
  std::unique_ptr<store::MirrorKeeper> mirror;
  {
    const std::lock_guard lock(mutex_);
    note = std::move(note_);
    mirror = std::move(mirror_);
  }
}

}  // namespace rb
