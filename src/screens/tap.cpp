#include "screens/tap.h"

#include <cmath>
#include <utility>

namespace rb::screens {

const Target* topmost(const std::vector<Target>& seen, Point at) {
  for (auto it = seen.rbegin(); it != seen.rend(); ++it) {
    if (it->box.holds(at)) return &*it;
  }
  return nullptr;
}

std::optional<Tap> TapReader::feed(const Touch& touch, const std::vector<Target>& seen,
                                   double px_per_mm) {
  if (touch.kind == Touch::Kind::move) return {};
  const Target* under = topmost(seen, touch.at);
  if (touch.kind == Touch::Kind::down) {
    down_ = touch;
    pressed_ = under != nullptr && under->enabled ? under->id : std::string{};
    return {};
  }
  const std::string pressed = std::exchange(pressed_, {});
  if (pressed.empty() || under == nullptr || !under->enabled || under->id != pressed) return {};
  const auto apart_mm = [px_per_mm](Point a, Point b) {
    return std::hypot(a.x - b.x, a.y - b.y) / px_per_mm;
  };
  const bool palm = touch.steady - down_.steady > kPalm;
  const bool wipe = apart_mm(touch.at, down_.at) > kWipeMm;
  // The press counts, not the release: an echo is a finger that comes back at once.
  const bool soon = last_ && down_.steady - still_ < kEcho;
  const bool same = last_ && last_->id == pressed;
  const bool near = last_ && apart_mm(down_.at, last_->at) <= kEchoReachMm;
  const bool keys = last_repeats_ && under->repeats;
  const bool echo = soon && !keys && (same || near);
  if (echo) still_ = touch.steady;
  if (palm || wipe || echo) {
    ++refused_;
    return {};
  }
  still_ = touch.steady;
  last_repeats_ = under->repeats;
  last_ = Tap{pressed, touch.at, touch.wall, touch.steady};
  return last_;
}

}  // namespace rb::screens
