// Raw events of the window, kept in order until a frame takes them. The drawing library has no
// queue of its own and the system may send ten taps between two frames: a tap is never lost.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "screens/glass/tap.h"

namespace rb::app {

class TouchQueue {
 public:
  /// A press or a release with a place and a moment of its own.
  /// Of moves one after the other the last counts: a press never waits behind them.
  void add(const screens::Touch& touch) {
    const auto is_move = [](const screens::Touch& t) {
      return t.kind == screens::Touch::Kind::move;
    };
    if (is_move(touch) && !touches_.empty() && is_move(touches_.back())) touches_.pop_back();
    touches_.push_back(touch);
  }
  /// The same from callbacks that tell neither: at the place last moved to, now.
  void moved(screens::Point at) { at_ = at; }
  void pressed(bool down, Moment wall, Seconds steady);
  /// Those that came after the first `count` may be off by this: the loop stood still.
  void doubt_since(std::size_t count, Seconds by);
  [[nodiscard]] std::size_t touches() const { return touches_.size(); }
  void letter(char32_t code);
  void erase() { typed_.emplace_back("\b"); }
  void escape() { escape_ = true; }

  [[nodiscard]] bool empty() const { return touches_.empty() && typed_.empty() && !escape_; }
  /// The oldest change of the finger, taken out; one a frame.
  std::optional<screens::Touch> next_touch();
  std::vector<std::string> take_typed();
  bool take_escape();

 private:
  screens::Point at_{};
  std::deque<screens::Touch> touches_;
  std::vector<std::string> typed_;
  bool escape_ = false;
};

/// A letter as UTF-8.
std::string utf8(char32_t code);

}  // namespace rb::app
