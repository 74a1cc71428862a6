// From raw touches to taps. A tap is a press and a release on the same target, neither wiped across
// the glass nor rested on like a palm, and not the echo of the tap before. It is judged by its own
// place and moment against the picture that was on the glass when it was pressed, and counts for
// what was pressed, wherever that stands by now; what is gone by now is refused, never given to
// what took its place. On a target that is drawn on a finger may travel as far as it likes. Pure;
// knows no window.
//
// Echoes: a press on the place of the last tap within 350 ms of the press before it (own times, not
// the times they were looked at), or within 100 ms of its release, makes nothing: drops of rain
// and a bouncing finger. A train of them lasts a second at most: the first press after that counts,
// so that a man who taps in haste is not locked out for ever. Against rain that goes on there is
// the lock for cleaning.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/quantity.h"
#include "screens/glass/geometry.h"

namespace rb::screens {

/// One change of the finger, with the moment it came in.
struct Touch {
  enum class Kind { down, up, move, second };  ///< second: of another finger, pressed meanwhile
  Kind kind = Kind::move;
  Point at{};
  Moment wall{};
  Seconds steady{};  ///< on a clock that never steps
  Seconds
      uncertain{};     ///< by how much both may be off: nothing told them, and the loop stood still
  float wandered = 0;  ///< of a release: the farthest the finger was from its press, in pixels
};

/// What can be tapped, as it was last drawn. Later ones lie over earlier ones.
struct Target {
  std::string id{};         ///< what it is, not what is written on it: "row R1 near" runs and rests
  Box box{};                ///< where it is drawn and felt
  bool enabled = true;      ///< a target that is not still swallows the tap
  bool repeats = false;     ///< may be tapped as fast as a finger can (keys of a pad)
  std::uint64_t scope = 0;  ///< which panel of which element it is on: "back" is not always "back"
  bool drags = false;       ///< a finger goes along it, or draws on it: it may travel, and leave it
  bool operator==(const Target&) const = default;
};

struct Tap {
  std::string id{};
  Point at{};
  Moment wall{};  ///< when the finger touched the glass
  Seconds steady{};
  Seconds uncertain{};
  Point to{};  ///< where it was let go of
};

/// A finger on its way over what it draws on.
struct Drag {
  std::string id{};
  Point from{}, to{};
};

/// What became of a press.
enum class PressEnd {
  taken,    ///< a tap
  nothing,  ///< where nothing can be tapped
  off,      ///< on what could not be used when it was pressed
  slid,     ///< let go of beside what was pressed
  palm,
  wipe,
  echo,
  gone,    ///< what was pressed is not there, or not to be used, any more
  second,  ///< of a second finger while one was on the glass
  locked,  ///< the glass is locked for cleaning
};
/// "taken", "gone", ...: for a log of presses.
const char* press_end_text(PressEnd end);

struct Press {
  std::string id{};  ///< what was pressed; empty for nothing
  Touch down{}, up{};
  PressEnd end = PressEnd::nothing;
};

class TapReader {
 public:
  static constexpr Seconds kEcho{0.350};      ///< a press sooner than this after one is its echo
  static constexpr Seconds kBounce{0.100};    ///< so is one sooner than this after a release
  static constexpr Seconds kTrain{1.0};       ///< a train of echoes lasts no longer than this
  static constexpr Seconds kPalm{3.0};        ///< a press longer than this is a palm at rest
  static constexpr double kEchoReachMm = 12;  ///< how far from the first tap an echo may land
  static constexpr double kWipeMm = 14;       ///< a finger that travels farther is wiping

  /// Feeds one touch against the targets as the user saw them when he made it; `now` are those
  /// that stand by now, where that is another picture.
  std::optional<Tap> feed(const Touch& touch, const std::vector<Target>& seen, double px_per_mm,
                          const std::vector<Target>* now = nullptr);
  /// The target under the finger now, empty for none: it is drawn pressed.
  [[nodiscard]] const std::string& pressed() const { return pressed_.id; }
  /// When and where the finger that is on the glass touched it; none: no finger is.
  [[nodiscard]] const std::optional<Touch>& held() const { return held_; }
  /// What is being drawn by that finger; none: it draws nothing.
  [[nodiscard]] std::optional<Drag> drag() const;
  /// The press that the last touch fed ended; none: it ended none.
  [[nodiscard]] const std::optional<Press>& ended() const { return ended_; }
  /// Taps that were thrown away as echo, palm or wipe.
  [[nodiscard]] int refused() const { return refused_; }
  /// Takes every press for done with: what it began on is no longer shown.
  void forget();

 private:
  [[nodiscard]] PressEnd judge(const Touch& up, const Target* under, double px_per_mm) const;
  [[nodiscard]] bool echoes(const Target& pressed, double px_per_mm) const;

  Target pressed_{};  ///< with an empty id: none
  std::string under_down_{};
  std::vector<Target> picture_{};  ///< that was seen when the finger came down
  std::optional<Touch> held_{};
  Point moved_{};  ///< where that finger was last
  std::optional<Press> ended_{};
  std::optional<Tap> last_{};
  Seconds before_{};  ///< when the last press, an echo or not, touched the glass
  Seconds still_{};   ///< and when it left it
  bool last_repeats_ = false;
  int refused_ = 0;
};

/// The topmost target at a point; nullptr for none.
const Target* topmost(const std::vector<Target>& seen, Point at);
/// The target that is the same one as `like`, wherever it stands; nullptr for none.
const Target* same_as(const std::vector<Target>& seen, const Target& like);

}  // namespace rb::screens
