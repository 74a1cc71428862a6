// The long look at a book that opening could only glance at: every row, index and mark, on a thread
// of its own, while nobody taps.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"

namespace rb::store {

class RestLook {
 public:
  /// Begins once nothing was tapped for `rest`. `wake` is called on its thread when take() has
  /// something to say.
  RestLook(std::filesystem::path book, std::function<void()> wake, Seconds rest = Seconds{10});
  RestLook(const RestLook&) = delete;
  RestLook& operator=(const RestLook&) = delete;
  /// Gives up a look under way.
  ~RestLook();

  /// Somebody taps: the look gives way (while it reads, the log cannot be brought in) and begins
  /// anew at rest. Returns at once.
  void tapped();

  /// Once, when it has looked: what is wrong, in plain sentences; empty: nothing.
  std::optional<std::vector<std::string>> take();

 private:
  struct Inside;
  std::shared_ptr<Inside> inside_;
  std::unique_ptr<class SideThread> thread_;
};

}  // namespace rb::store
