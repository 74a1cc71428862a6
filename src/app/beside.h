// What follows the book beside it while the screens are open: the note of the head and the mirror.
#pragma once

#include <memory>
#include <mutex>

#include "app/commands.h"
#include "store/logbook.h"
#include "store/mirror_keeper.h"
#include "store/note_keeper.h"

namespace rb {

class Beside {
 public:
  /// `mirror`: the folder every tap goes to as it is kept; empty: none.
  void begin(const Path& book, const Path& mirror);
  /// An event is on the disk. Any thread; returns at once.
  void kept(const BookHead& head);
  /// Lets both catch up, two seconds each at most, and ends them: before the book is closed.
  void end();

 private:
  std::mutex mutex_;
  std::unique_ptr<store::NoteKeeper> note_;
  std::unique_ptr<store::MirrorKeeper> mirror_;
};

}  // namespace rb
