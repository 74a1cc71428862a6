// What follows the book beside it while the screens are open: the note of the head, the mirror, and
// copies asked for by hand.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "app/paper_job.h"
#include "base/path.h"
#include "screens/seen/second_copy.h"
#include "screens/view/intents.h"
#include "store/book/logbook.h"
#include "store/copies/copy_job.h"
#include "store/copies/mirror_keeper.h"
#include "store/keep/note_keeper.h"

namespace rb {

class Beside {
 public:
  struct Hooks {
    std::function<void()> changed{};            ///< seen() did; called on other threads
    std::function<void(const Path&)> chosen{};  ///< a mirror's folder was; to be stored
    /// Writes the record of a day of the book into a folder that is there: the path of what was
    /// written. On a thread of its own; none: no records are made.
    std::function<Result<std::string>(const Path& book, const screens::MakeRecord& wish,
                                      const Path& folder)>
        record{};
    std::vector<Path> roots{};  ///< where folders to choose from are looked for
  };
  /// `mirror`: the folder every tap goes to as it is kept; empty: none.
  void begin(const Path& book, const Path& mirror, Hooks hooks);
  void begin(const Path& book, const Path& mirror) { begin(book, mirror, {}); }
  /// An event is on the disk. Any thread; returns at once.
  void kept(const BookHead& head);
  /// What the user wants of the second copy; anything else is left alone. Returns at once.
  void act(const screens::Intent& wish);
  /// How it stands; none before begin() and after end().
  [[nodiscard]] std::optional<screens::MirrorSeen> seen() const;
  /// What the mirror has to tell once, in plain sentences: since the last call.
  std::vector<std::string> take_told();
  /// Lets note and mirror catch up, two seconds each at most, and ends them: before the book is
  /// closed. A copy under way is given up.
  void end();

 private:
  struct Places;
  void copy();
  void record(const screens::MakeRecord& wish);
  [[nodiscard]] std::vector<Path> paper_folders() const;
  mutable std::mutex mutex_;
  Path book_;
  Hooks hooks_;
  std::unique_ptr<store::NoteKeeper> note_;
  std::unique_ptr<store::MirrorKeeper> mirror_;
  std::unique_ptr<store::CopyJob> copy_;
  std::unique_ptr<PaperJob> paper_, record_;
  std::string copy_refused_;  ///< why none was begun
  std::shared_ptr<Places> places_;
  std::unique_ptr<store::SideThread> finder_;
  std::size_t told_ = 0;
};

}  // namespace rb
