// From raw touches to taps. A tap is a press and a release on the same target, neither wiped across
// the glass nor rested on like a palm, and not the echo of the tap before: a second tap on the same
// place within 350 ms of it, or of its last echo, makes nothing, whatever stands there by then: a
// train of drops is one tap. Pure; knows no window.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/quantity.h"
#include "screens/geometry.h"

namespace rb::screens {

/// One change of the finger, with the moment it came in.
struct Touch {
  enum class Kind { down, up, move };
  Kind kind = Kind::move;
  Point at{};
  Moment wall{};
  Seconds steady{};  ///< on a clock that never steps
};

/// What can be tapped, as it was last drawn. Later ones lie over earlier ones.
struct Target {
  std::string id{};      ///< what it is, not what is written on it: "row R1 near" runs and rests
  Box box{};             ///< where it is drawn and felt
  bool enabled = true;   ///< a target that is not still swallows the tap
  bool repeats = false;  ///< may be tapped as fast as a finger can (keys of a pad)
};

struct Tap {
  std::string id{};
  Point at{};
  Moment wall{};  ///< when the finger left the glass
  Seconds steady{};
};

class TapReader {
 public:
  static constexpr Seconds kEcho{0.350};      ///< a second tap sooner than this is an echo
  static constexpr Seconds kPalm{3.0};        ///< a press longer than this is a palm at rest
  static constexpr double kEchoReachMm = 12;  ///< how far from the first tap an echo may land
  static constexpr double kWipeMm = 14;       ///< a finger that travels farther is wiping

  /// Feeds one touch against the targets as the user saw them.
  std::optional<Tap> feed(const Touch& touch, const std::vector<Target>& seen, double px_per_mm);
  /// The target under the finger now, empty for none: it is drawn pressed.
  [[nodiscard]] const std::string& pressed() const { return pressed_; }
  /// Taps that were thrown away as echo, palm or wipe.
  [[nodiscard]] int refused() const { return refused_; }

 private:
  std::string pressed_{};
  Touch down_{};
  std::optional<Tap> last_{};
  Seconds still_{};  ///< when the last tap, or an echo of it, left the glass
  bool last_repeats_ = false;
  int refused_ = 0;
};

/// The topmost target at a point; nullptr for none.
const Target* topmost(const std::vector<Target>& seen, Point at);

}  // namespace rb::screens
