#include "tablet/press_maker.h"

#include <algorithm>
#include <cmath>

namespace rb::app {

namespace {

// A server that counts by our clock is never ahead of it by more than its rounding, and some event
// of the first few comes in within this.
constexpr double kAheadMs = 2;
constexpr double kAtOnceMs = 100;
constexpr float kMoveToldPx = 4;

}  // namespace

double ServerClock::apart_ms(std::uint32_t server_ms, Seconds steady) {
  const double ours = steady.count() * 1000;
  const auto whole = static_cast<std::uint64_t>(std::max(0.0, std::floor(ours)));
  // Modulo 2^32, as the server counts; half of the round counts as before it.
  const auto behind = static_cast<std::int32_t>(static_cast<std::uint32_t>(whole) - server_ms);
  return static_cast<double>(behind) + (ours - static_cast<double>(whole));
}

void ServerClock::received(std::uint32_t server_ms, Seconds steady) {
  const double apart = apart_ms(server_ms, steady);
  least_ = least_ ? std::min(*least_, apart) : apart;
}

bool ServerClock::shared() const {
  return least_ && *least_ > -kAheadMs && *least_ < kAtOnceMs;
}

Seconds ServerClock::steady_of(std::uint32_t server_ms, Seconds received) const {
  const double apart = apart_ms(server_ms, received);
  const double waited = shared() ? apart : apart - least_.value_or(apart);
  return received - Seconds{std::max(0.0, waited) / 1000};
}

void PressMaker::wander(screens::Point at) {
  wandered_ = std::max(wandered_, std::hypot(at.x - from_.x, at.y - from_.y));
}

bool PressMaker::is_held(const PointerChange& change) const {
  switch (change.kind) {
    case PointerChange::Kind::button_down:
    case PointerChange::Kind::button_up:
      return holds_ == Holds::button && change.detail == 1;
    case PointerChange::Kind::motion:
      return holds_ == Holds::button;
    default:
      return holds_ == Holds::finger && change.detail == finger_;
  }
}

std::optional<screens::Touch> PressMaker::begin(Holds what, const PointerChange& change,
                                                Seconds received) {
  const Seconds steady = clock_.steady_of(change.time, received);
  if (holds_ != Holds::nothing) {
    if (is_held(change)) return {};  // told twice
    return screens::Touch{.kind = screens::Touch::Kind::second, .at = change.at, .steady = steady};
  }
  holds_ = what;
  finger_ = change.detail;
  from_ = told_ = change.at;
  wandered_ = 0;
  return screens::Touch{.kind = screens::Touch::Kind::down, .at = change.at, .steady = steady};
}

std::optional<screens::Touch> PressMaker::end(const PointerChange& change, Seconds received) {
  if (!is_held(change)) return {};
  wander(change.at);
  holds_ = Holds::nothing;
  return screens::Touch{.kind = screens::Touch::Kind::up,
                        .at = change.at,
                        .steady = clock_.steady_of(change.time, received),
                        .wandered = wandered_};
}

std::optional<screens::Touch> PressMaker::move(const PointerChange& change, Seconds received) {
  wander(change.at);
  // A finger at rest trembles: that wakes nobody.
  if (std::hypot(change.at.x - told_.x, change.at.y - told_.y) < kMoveToldPx) return {};
  told_ = change.at;
  return screens::Touch{.kind = screens::Touch::Kind::move,
                        .at = change.at,
                        .steady = clock_.steady_of(change.time, received)};
}

std::optional<screens::Touch> PressMaker::feed(const PointerChange& change, Seconds received) {
  clock_.received(change.time, received);
  if (change.emulated) return {};
  switch (change.kind) {
    case PointerChange::Kind::button_down:
      if (change.detail != 1) return {};
      return begin(Holds::button, change, received);
    case PointerChange::Kind::touch_begin:
      return begin(Holds::finger, change, received);
    case PointerChange::Kind::button_up:
    case PointerChange::Kind::touch_end:
      return end(change, received);
    case PointerChange::Kind::motion:
    case PointerChange::Kind::touch_update:
      return is_held(change) ? move(change, received) : std::nullopt;
  }
  return {};
}

}  // namespace rb::app
