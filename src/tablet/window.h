// The window on the tablet: its events kept in a queue of our own, its picture drawn only when
// something changed or a timer ticks.
#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <string>

#include "base/result.h"
#include "screens/book/ui.h"

namespace rb::app {

/// A loop that does not come round for longer than this stood still: the screen says so.
inline constexpr Seconds kStall{0.3};

struct WindowSpec {
  std::string title = "Risebook";
  int width = 1280, height = 800;
  bool full_screen = false;
  bool always_redraw = false;  ///< draw without end: only to measure what that would cost
};

/// What the window asks of the program.
struct Program {
  /// What stands in the book at a moment; called once a frame.
  std::function<screens::World(Moment now)> look;
  /// Does what the user wants. False: leave.
  std::function<bool(const screens::Intents& intents)> act;
  /// Sounds a tone for something of this weight that newly needs a hand; may be empty.
  std::function<void(Severity severity)> sound;
  /// False: something would be lost by leaving, and the user is asked first; may be empty.
  std::function<bool()> may_leave;
  /// Told of every press and what became of it; may be empty.
  std::function<void(const screens::Press& press)> pressed;
  /// Set from elsewhere (a signal) to leave within half a second; may be null.
  const std::atomic<bool>* stop = nullptr;
  /// How much leaving now would lose: leaving for `stop` waits, the screens shown, until that is
  /// nothing or has not become less for `patience`; may be empty.
  std::function<std::size_t()> would_lose;
  Seconds patience{10};
};

struct WindowReport {
  long frames = 0;          ///< drawn
  double build_max_ms = 0;  ///< the longest a frame took to build, drawing left out
  double gap_max_ms = 0;    ///< the longest from poll to poll, building and drawing left out
  long stalls = 0;          ///< how often the loop stood still longer than kStall
};

/// Has the window look at the world again; to be called from any thread, at any time.
void wake_window();

/// Opens the window and shows the screens until the user leaves. Without a display: an error in
/// plain words that names the commands which need none.
Result<WindowReport> show(const WindowSpec& spec, screens::Ui& ui, const Program& program);

}  // namespace rb::app
