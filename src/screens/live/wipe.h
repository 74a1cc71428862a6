// The glass locked for cleaning: nothing is tapped, running rows stay in sight. It ends by two
// still holds in two corners, one after the other, which a wiping hand does not make; or by itself,
// when its time is over and nothing has touched the glass for a while.
#pragma once

#include <optional>

#include "screens/entry/stage.h"
#include "screens/glass/tap.h"

namespace rb::screens {

class Wipe {
 public:
  static constexpr Seconds kHold{2};     ///< on each corner, at least
  static constexpr Seconds kBetween{6};  ///< from the first corner let go to the second pressed
  static constexpr Seconds kLocked{60};  ///< ends by itself after this
  static constexpr Seconds kAlone{5};    ///< but only when untouched this long
  static constexpr double kStillMm = 6;  ///< a finger that wanders farther is wiping

  void begin(Seconds steady);
  [[nodiscard]] bool on() const { return on_; }
  /// A touch while it is on; the press it ended, to be told as locked out.
  std::optional<Press> feed(const Touch& touch, const Scale& scale);
  /// Time goes by.
  void tick(Seconds steady);
  /// How long until it ends by itself.
  [[nodiscard]] Seconds left(Seconds steady) const;

  /// Draws it over everything; `view` is the pour on the screen, or null.
  void draw(Stage& stage, const PourView* view, Seconds steady) const;

 private:
  /// Where the corner stands, 1 or 2.
  [[nodiscard]] static Box corner(int which, const Scale& scale);
  [[nodiscard]] bool held_still(const Touch& up, int which, const Scale& scale) const;
  void draw_corner(Stage& stage, int which, Seconds steady) const;

  bool on_ = false;
  Seconds began_{}, touched_{};
  std::optional<Touch> down_{};
  std::optional<Seconds> first_{};  ///< when the first corner was let go, held long enough
};

}  // namespace rb::screens
