// Keeps the display from sleeping while work goes on: in the X server (its screen saver and its
// power saving wait) and at the system's login manager (idle and sleep are held off). On a thread
// of its own; where there is neither, nothing happens. Both let go by themselves when the program
// dies.
#pragma once

#include <memory>

#include "screens/book/ui.h"

namespace rb::app {

/// A row runs, or a lift is placed: on the pour shown, or on another one that is open.
bool work_goes_on(const screens::World& world);

class Awake {
 public:
  Awake();
  ~Awake();
  Awake(const Awake&) = delete;
  Awake& operator=(const Awake&) = delete;
  /// Returns at once; said as often as one likes.
  void hold(bool on);

 private:
  struct Inside;
  std::unique_ptr<Inside> in_;
};

}  // namespace rb::app
