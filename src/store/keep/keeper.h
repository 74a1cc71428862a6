// The writer of a book: a thread of its own that appends what is tapped, so that nobody who draws
// ever waits for the disk.
//
// keep() gives an event back at once as the book will hold it; the thread appends in order. What
// the disk refuses waits with its true time and is tried again for ever. All calls come from one
// thread (the one that draws); the hooks are called on the writer's.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/book/logbook.h"

namespace rb {

enum class KeepState {
  kept,        ///< all of it is on the disk
  keeping,     ///< the disk was asked and has not answered yet
  waiting,     ///< the disk refused; it is asked again and again
  moved_away,  ///< the file at the book's path is no longer the book that is open
};

struct KeeperStatus {
  KeepState state = KeepState::kept;
  std::size_t waiting = 0;         ///< taps not kept yet
  std::optional<Moment> oldest{};  ///< when the first of them was entered
  std::int64_t kept = 0;           ///< number of the last event that is kept
  std::optional<Error> why{};      ///< what stands in the way, while something does
  int renumbered = 0;  ///< counts up when the book refused an event: ids given before are void
};

/// An event the book would not take for what is in it, and why.
struct RefusedTap {
  Tapped tap;
  Error why;
};

class Keeper {
 public:
  struct Hooks {
    /// An event is on the disk, and stands where the book is looked for. Must return at once.
    std::function<void(const BookHead&)> on_kept{};
    /// status() changed.
    std::function<void()> wake{};
  };
  /// How patient the writer is; tests hurry it.
  struct Pace {
    Seconds first_retry{0.02}, longest_retry{1};
    Seconds rest{1.5};               ///< after the last tap the log is brought into the file
    Seconds look{5};                 ///< at rest: how often the file is looked for
    std::uintmax_t log = 4U << 20U;  ///< a log of more bytes is brought in between two taps
  };

  /// Takes over a book open for writing.
  static Result<std::unique_ptr<Keeper>> start(Logbook book, Hooks hooks, Pace pace);
  static Result<std::unique_ptr<Keeper>> start(Logbook book, Hooks hooks) {
    return start(std::move(book), std::move(hooks), Pace{});
  }

  Keeper(const Keeper&) = delete;
  Keeper& operator=(const Keeper&) = delete;
  /// Asks the disk once more for what waits, then ends; settle() first where it must not be lost.
  ~Keeper();

  /// The event as the book will give it: its id foreseen, its entry `entry`. An error of kind input
  /// when it could not be read back; then nothing waits. `seen`: the count of status().renumbered
  /// that the ids known to the caller are of; an event that speaks of another by an id since void
  /// is refused (kind refused), for it might hit the wrong one.
  Result<Event> keep(const PourId& pour, Event event, const Entry& entry,
                     std::optional<int> seen = std::nullopt);

  [[nodiscard]] KeeperStatus status() const;
  /// What waits for the disk, in order, as keep() gave it.
  [[nodiscard]] std::vector<Tapped> waiting() const;
  /// How many of those are of this pour.
  [[nodiscard]] std::size_t waiting_of(const PourId& pour) const;
  /// What the book refused since the last call.
  std::vector<RefusedTap> take_refused();
  /// Waits until nothing waits, at most so long; false when something still does.
  bool settle(Seconds at_most);
  /// Waits until the one file is whole besides, its log emptied.
  bool settle_file(Seconds at_most);

  [[nodiscard]] const std::string& tag() const;
  [[nodiscard]] const std::string& uuid() const;
  [[nodiscard]] const std::filesystem::path& file() const;

 private:
  struct Inside;
  explicit Keeper(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace rb
