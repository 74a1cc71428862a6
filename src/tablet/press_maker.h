// From what the window system tells of pointers and fingers to presses, each with its own place and
// moment. Pure: knows no window system, so that recorded events can be fed to it.
#pragma once

#include <cstdint>
#include <optional>

#include "base/moment.h"
#include "screens/glass/tap.h"

namespace rb::app {

/// One change of a pointer or a finger as the server tells it.
struct PointerChange {
  enum class Kind { button_down, button_up, motion, touch_begin, touch_update, touch_end };
  Kind kind = Kind::motion;
  int detail = 0;          ///< the button, or the finger's number
  bool emulated = false;   ///< made by the server out of a touch or a wheel
  std::uint32_t time = 0;  ///< the server's own, milliseconds; begins anew at 2^32
  screens::Point at{};
};

/// The server's milliseconds on our steady clock. A server on this machine counts by the very clock
/// that never steps; another is held to the least delay seen between its time and the receipt.
class ServerClock {
 public:
  /// An event told this time and came in then. Delays only ever add: the least difference is kept.
  void received(std::uint32_t server_ms, Seconds steady);
  /// When it happened: never after its receipt.
  [[nodiscard]] Seconds steady_of(std::uint32_t server_ms, Seconds received) const;
  /// True when the server counts by our steady clock itself.
  [[nodiscard]] bool shared() const;

 private:
  /// How long an event can have waited and still be told from one of the round before (24 days).
  [[nodiscard]] static double apart_ms(std::uint32_t server_ms, Seconds steady);
  std::optional<double> least_{};  ///< of receipt less server time, milliseconds
};

/// What one change comes to; `steady` is filled in, the wall clock is not.
class PressMaker {
 public:
  /// The left button and the first finger make presses; what the server makes out of touches for
  /// those who do not know them is skipped. A second finger while one is on the glass is told as
  /// Kind::second, once. What is held and moves on tells so every few pixels.
  std::optional<screens::Touch> feed(const PointerChange& change, Seconds received);
  /// A time told by the server outside of presses, to know its clock by.
  void told(std::uint32_t server_ms, Seconds received) { clock_.received(server_ms, received); }
  [[nodiscard]] const ServerClock& clock() const { return clock_; }
  [[nodiscard]] bool pressed() const { return holds_ != Holds::nothing; }

 private:
  enum class Holds { nothing, button, finger };
  std::optional<screens::Touch> begin(Holds what, const PointerChange& change, Seconds received);
  std::optional<screens::Touch> end(const PointerChange& change, Seconds received);
  std::optional<screens::Touch> move(const PointerChange& change, Seconds received);
  void wander(screens::Point at);
  [[nodiscard]] bool is_held(const PointerChange& change) const;

  ServerClock clock_;
  Holds holds_ = Holds::nothing;
  int finger_ = 0;
  screens::Point from_{};
  screens::Point told_{};  ///< where it was told to be last
  float wandered_ = 0;
};

}  // namespace rb::app
