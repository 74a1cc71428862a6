// Presses straight from the X server, on a connection and a thread of our own: each with the place
// and the moment the server gave it, however long the program stood still. The window toolkit tells
// neither: its button callback knows only where the pointer is, and what time it is, by then.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "screens/glass/tap.h"

namespace rb::app {

class XInput {
 public:
  /// Lays an invisible window for input alone over the whole of an X11 window and listens to it;
  /// keys still reach the window under it. `wake` is called on the other thread whenever a press or
  /// a release has come in. Fails where there is no X server or no XInput 2.
  static Result<std::unique_ptr<XInput>> listen(unsigned long window, std::function<void()> wake);
  ~XInput();
  XInput(const XInput&) = delete;
  XInput& operator=(const XInput&) = delete;

  /// What has come in since, in order; places in units of the window.
  std::vector<screens::Touch> take();
  /// In plain words, for the log of presses: by which clock and with which protocol.
  [[nodiscard]] const std::string& told() const;

 private:
  struct Inside;
  explicit XInput(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> in_;
};

}  // namespace rb::app
