// The program between the screens and the book: keeps what is tapped, folds it, checks it, and says
// what stands. Knows no window, so that tests drive it as the window does. Writing and reading the
// book are other threads' work: no call here but open() and settle() waits for the disk.
#pragma once

#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <vector>

#include "app/last_book.h"
#include "app/pour_list.h"
#include "app/signing/sign_desk.h"
#include "screens/book/ui.h"
#include "store/file/device_key.h"
#include "store/keep/keeper.h"
#include "store/keep/reader.h"
#include "store/keep/rest_look.h"

namespace rb {

/// The two clocks, to be set by hand in tests.
using ClockFn = std::function<Entry()>;

class Session {
 public:
  /// Opens or makes the book and goes straight into the pour that is under way, if there is one, as
  /// soon as it is read. A book that can be read but not written is opened for reading and says
  /// so. The hooks are called on other threads. With a key, heads are signed.
  static Result<std::unique_ptr<Session>> open(const std::filesystem::path& book, ClockFn clock,
                                               std::chrono::minutes utc_offset,
                                               Keeper::Hooks hooks = {},
                                               std::optional<store::DeviceKey> key = {});
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  /// What stands now. Its pointers hold until the next call of look() or act().
  screens::World look();

  /// Keeps events and goes where the user wants. False: the user leaves. A tap that could not be
  /// kept is told in the next look().
  bool act(const screens::Intents& intents);

  /// Waits until everything is kept, read and handed over, at most so long; false when it is not.
  bool settle(Seconds at_most = Seconds{10});

  /// Whether something waits that leaving now would lose.
  [[nodiscard]] bool would_lose() const;
  /// Taps not on the disk yet.
  [[nodiscard]] std::size_t waiting() const;

  /// Called when settings change, to be stored.
  std::function<void(const screens::Settings&)> on_settings;

  /// Told of what the user wants beside the book (screens::wants_beside).
  std::function<void(const screens::Intent&)> on_beside;

  /// Who holds the tablet from now on: told by every event. None: the plan's first foreman.
  void held_by(std::optional<Person> holder) { holder_ = std::move(holder); }

  /// To be told, one after the other, each until it was read, as long as nothing else is.
  void tell(screens::Trouble trouble) { told_.push_back(std::move(trouble)); }

  [[nodiscard]] const PourState* pour() const { return state_ ? &*state_ : nullptr; }
  void go_to(const PourId& pour);

  /// Now, on the clock the pour is told in: steps of the wall clock since the tablet started are
  /// taken out, as fold() takes them out of events.
  [[nodiscard]] Moment now() const;

  /// Which book it is, and how far it has come.
  [[nodiscard]] LastBook book() const;

  /// When its newest event was entered, as it was opened; none in an empty book.
  [[nodiscard]] std::optional<Moment> last_entry() const { return last_entry_; }

  /// Where PINs tried are counted, before the first is.
  void count_tries_in(const Path& file);

  /// The writer; null where the book is only read.
  [[nodiscard]] const Keeper* keeper() const { return keeper_.get(); }

 private:
  struct Arrival;
  /// Of the last event that is on the disk; the writer's thread sets it.
  struct Head {
    std::mutex mutex;
    BookHead last;
    void set(const Result<BookHead>& head);
  };
  Session(std::filesystem::path book, ClockFn clock, std::chrono::minutes utc_offset,
          std::function<void()> wake);
  void begin();
  void ask_list(const ListWish& wish);
  void arrive(const PourId& pour, Result<Arrival> arrived, std::size_t tapped);
  void shown(PourState state);
  void keep(const screens::KeepEvent& wish);
  Result<void> keep_as_it_is(Event event);
  bool sign(const screens::Intent& wish);  ///< false: the wish is another one
  void look_for_keys();
  void hear_desk();  ///< what became of a signature asked for
  void recheck();
  void open_pour(const screens::OpenPour& wish);
  void open_pour_as(const screens::OpenPour& wish, const PourId& id);
  void hear_keeper();
  void leave_pour();
  void hear_look();  ///< what the look at rest found
  void fail_with(const Error& error, bool not_kept);
  void refuse_reading();  ///< a tap on a book that is only read
  [[nodiscard]] screens::Keeping keeping() const;
  [[nodiscard]] std::optional<screens::HeadSeen> head() const;
  [[nodiscard]] PersonId holder() const;
  [[nodiscard]] Seconds stepped() const;  ///< wall clock minus the pour's clock, now

  ClockFn clock_;
  std::chrono::minutes utc_offset_;
  std::optional<Person> holder_;
  ListPart list_;
  ListWish wanted_;  ///< the part of the list shown
  std::optional<PourState> state_;
  std::optional<CheckReport> report_;
  CheckMemory memory_;          ///< of the pour on the screen
  screens::DamageSeen damage_;  ///< of it
  Moment checked_at_{};
  std::optional<screens::Trouble> trouble_;
  std::deque<screens::Trouble> told_;  ///< to be read: no tap puts it away
  std::shared_ptr<Head> head_;
  LastBook book_;                      ///< as it was opened
  std::optional<Moment> last_entry_;   ///< the same
  std::optional<Error> reading_only_;  ///< why the book is not written
  std::optional<PourId> going_;        ///< being read
  bool beginning_ = false;             ///< it is the pour the tablet was in, if still open
  bool opening_ = false;               ///< a new pour is looked a name for
  int asked_ = 0;  ///< what was asked of the reader last: earlier answers are stale
  int asked_list_ = 0;
  int renumbered_ = 0;      ///< of the keeper: the ids of state_ are of that count
  std::size_t tapped_ = 0;  ///< taps of the pour on the screen
  std::int64_t kept_ = 0;   ///< as the writer said last
  std::unique_ptr<Keeper> keeper_;
  std::unique_ptr<store::RestLook> rest_look_;  ///< where the book is written
  std::unique_ptr<SignDesk> desk_;              ///< the same
  std::shared_ptr<PourList> lists_;             ///< the reader's
  Reader reader_;  ///< goes first: its jobs speak of all that stands above
};

}  // namespace rb
