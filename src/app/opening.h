// A book being opened on a thread of its own: the window is up meanwhile, whatever the disk does.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "app/session.h"

namespace rb {

class Opening {
 public:
  /// The book and what is to be told of it before the first tap.
  struct Opened {
    std::unique_ptr<Session> session;
    std::vector<screens::Trouble> told;
  };
  using Open = std::function<Result<Opened>()>;

  /// `open` runs on the thread, and `wake` after it.
  Opening(Open open, std::function<void()> wake);
  Opening(const Opening&) = delete;
  Opening& operator=(const Opening&) = delete;
  ~Opening();  ///< waits for the thread

  /// Once, when it is done.
  std::optional<Result<Opened>> take();
  /// The same, waiting for it.
  Result<Opened> wait();

 private:
  std::mutex mutex_;
  std::optional<Result<Opened>> done_;  ///< under the mutex
  std::thread thread_;
};

}  // namespace rb
