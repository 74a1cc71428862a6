#include "screens/glass/tap.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace rb::screens {

namespace {

double apart_mm(Point a, Point b, double px_per_mm) {
  return std::hypot(a.x - b.x, a.y - b.y) / px_per_mm;
}

}  // namespace

const char* press_end_text(PressEnd end) {
  constexpr std::array<const char*, 10> kTexts{"taken", "nothing", "off",  "slid",   "palm",
                                               "wipe",  "echo",    "gone", "second", "locked"};
  return kTexts.at(static_cast<std::size_t>(end));
}

const Target* topmost(const std::vector<Target>& seen, Point at) {
  for (auto it = seen.rbegin(); it != seen.rend(); ++it) {
    if (it->box.holds(at)) return &*it;
  }
  return nullptr;
}

const Target* same_as(const std::vector<Target>& seen, const Target& like) {
  const auto found = std::find_if(seen.begin(), seen.end(), [&](const Target& t) {
    return t.id == like.id && t.scope == like.scope;
  });
  return found == seen.end() ? nullptr : &*found;
}

bool TapReader::echoes(const Target& pressed, double px_per_mm) const {
  if (!last_ || !held_) return false;
  const Seconds down = held_->steady;
  const bool soon = down - before_ < kEcho || down - still_ < kBounce;
  const bool train = down - last_->steady < kTrain;
  const bool same = last_->id == pressed.id;
  const bool near = apart_mm(held_->at, last_->at, px_per_mm) <= kEchoReachMm;
  const bool keys = last_repeats_ && pressed.repeats;
  return soon && train && !keys && (same || near);
}

PressEnd TapReader::judge(const Touch& up, const Target* under, double px_per_mm) const {
  if (pressed_.id.empty()) return under_down_.empty() ? PressEnd::nothing : PressEnd::off;
  if (pressed_.drags) return PressEnd::taken;  // a long way and a long time are what it is for
  const double far =
      std::max(apart_mm(up.at, held_->at, px_per_mm), static_cast<double>(up.wandered) / px_per_mm);
  const Target* still = topmost(picture_, up.at);
  const auto is_it = [&](const Target* t) {
    return t != nullptr && t->id == pressed_.id && t->scope == pressed_.scope;
  };
  if (!is_it(under) && !is_it(still)) return PressEnd::slid;
  if (up.steady - held_->steady > kPalm) return PressEnd::palm;
  if (far > kWipeMm) return PressEnd::wipe;
  return echoes(pressed_, px_per_mm) ? PressEnd::echo : PressEnd::taken;
}

std::optional<Tap> TapReader::feed(const Touch& touch, const std::vector<Target>& seen,
                                   double px_per_mm, const std::vector<Target>* now) {
  ended_.reset();
  if (touch.kind == Touch::Kind::move) {
    moved_ = touch.at;
    return {};
  }
  const Target* under = topmost(seen, touch.at);
  if (touch.kind == Touch::Kind::second) {
    if (under != nullptr) ended_ = Press{under->id, touch, touch, PressEnd::second};
    return {};
  }
  if (touch.kind == Touch::Kind::down) {
    held_ = touch;
    moved_ = touch.at;
    picture_ = seen;
    under_down_ = under != nullptr ? under->id : std::string{};
    pressed_ = under != nullptr && under->enabled ? *under : Target{};
    return {};
  }
  if (!held_) return {};
  PressEnd end = judge(touch, under, px_per_mm);
  const Target pressed = std::exchange(pressed_, {});
  const Touch down = *std::exchange(held_, {});
  const Target* stands = same_as(now != nullptr ? *now : seen, pressed);
  if (end == PressEnd::taken && (stands == nullptr || !stands->enabled)) end = PressEnd::gone;
  ended_ = Press{under_down_, down, touch, end};
  if (end == PressEnd::palm || end == PressEnd::wipe || end == PressEnd::echo) ++refused_;
  if (end == PressEnd::taken || end == PressEnd::echo) {
    before_ = down.steady;
    still_ = touch.steady;
  }
  if (end != PressEnd::taken) return {};
  if (pressed.drags) {  // it ends where it was let go of, and what comes after is no echo of it
    last_.reset();
    return Tap{pressed.id, down.at, down.wall, down.steady, down.uncertain, touch.at};
  }
  last_repeats_ = pressed.repeats;
  last_ = Tap{pressed.id, down.at, down.wall, down.steady, down.uncertain, touch.at};
  return last_;
}

std::optional<Drag> TapReader::drag() const {
  if (!held_ || !pressed_.drags) return std::nullopt;
  return Drag{pressed_.id, held_->at, moved_};
}

void TapReader::forget() {
  pressed_ = {};
  under_down_.clear();
  held_.reset();
  ended_.reset();
}

}  // namespace rb::screens
