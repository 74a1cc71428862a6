// The program between the screens and the book: keeps what is tapped, folds it, checks it, and says
// what stands. Knows no window, so that tests drive it as the window does.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "screens/ui.h"
#include "store/logbook.h"

namespace rb {

/// The two clocks, to be set by hand in tests.
using ClockFn = std::function<Entry()>;

class Session {
 public:
  /// Opens or makes the book and goes straight into the pour that is under way, if there is one.
  static Result<std::unique_ptr<Session>> open(const std::filesystem::path& book, ClockFn clock,
                                               std::chrono::minutes utc_offset);

  /// What stands now. Its pointers hold until the next call of look() or act().
  screens::World look();

  /// Keeps events and goes where the user wants. False: the user leaves. A tap that could not be
  /// kept is told in the next look().
  bool act(const screens::Intents& intents);

  /// Called when settings change, to be stored.
  std::function<void(const screens::Settings&)> on_settings;

  /// Who holds the tablet from now on: told by every event. None: the plan's first foreman.
  void held_by(std::optional<Person> holder) { holder_ = std::move(holder); }

  [[nodiscard]] const PourState* pour() const { return state_ ? &*state_ : nullptr; }
  void go_to(const PourId& pour);

  /// Now, on the clock the pour is told in: steps of the wall clock since the tablet started are
  /// taken out, as fold() takes them out of events.
  [[nodiscard]] Moment now() const;

 private:
  Session(Logbook book, ClockFn clock, std::chrono::minutes utc_offset);
  void load_cards();
  void keep(const screens::KeepEvent& wish);
  void open_pour(const screens::OpenPour& wish);
  [[nodiscard]] PersonId holder() const;
  [[nodiscard]] Seconds stepped() const;  ///< wall clock minus the pour's clock, now

  Logbook book_;
  ClockFn clock_;
  std::chrono::minutes utc_offset_;
  std::optional<Person> holder_;
  std::vector<screens::PourCard> cards_;
  std::optional<PourState> state_;
  std::optional<CheckReport> report_;
  CheckMemory memory_;  ///< of the pour on the screen
  Moment checked_at_{};
  std::optional<screens::Trouble> trouble_;
};

}  // namespace rb
