// What could be tapped in the pictures that were on the glass lately, each with the moment it came
// up: a press that waited is judged against what its finger saw.
#pragma once

#include <deque>
#include <optional>
#include <vector>

#include "screens/glass/tap.h"

namespace rb::screens {

class Pictures {
 public:
  static constexpr Seconds kKept{30};  ///< a press that waited longer is judged by the oldest kept

  /// A picture was drawn; one that can be tapped like the last is the same picture.
  void drawn(std::vector<Target> targets);
  /// The last picture drawn came up on the glass.
  void shown(Seconds steady);
  /// What was on the glass at a moment. Where no picture was ever said to be shown (no window), the
  /// last drawn.
  [[nodiscard]] const std::vector<Target>& at(Seconds steady) const;
  /// What was drawn last, shown or not.
  [[nodiscard]] const std::vector<Target>& latest() const;

 private:
  struct Picture {
    std::optional<Seconds> shown{};
    std::vector<Target> targets{};
  };
  std::deque<Picture> all_{};
  bool ever_shown_ = false;
};

}  // namespace rb::screens
