// What is said for a few seconds over the head of the screen: that a tap was not taken and why, and
// that the tablet stood still. No press is ever lost without a word.
#pragma once

#include <optional>
#include <string>

#include "screens/entry/stage.h"
#include "screens/glass/tap.h"

namespace rb::screens {

/// The loop did not come round for a while.
struct Stall {
  Seconds span{};
  bool times_kept = true;  ///< taps made in it have their own times
};

class Notices {
 public:
  static constexpr Seconds kQuiet{5}, kLoud{8};

  /// True when it is to be said aloud, with a tone: what was pressed is no longer there.
  bool ended(const Press& press, Moment now);
  void stood(const Stall& stall, Moment now);
  /// Draws what still stands, below `top`; the moment it ends is told to the caller.
  std::optional<Seconds> draw(Stage& stage, float top) const;

 private:
  PressEnd end_ = PressEnd::taken;
  int count_ = 0;
  std::optional<Moment> press_until_{};
  std::optional<Stall> stall_{};
  Moment stall_until_{};
};

}  // namespace rb::screens
