// The end of the program, at most so long after it began: a disk that does not answer holds nobody.
#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>

#include "app/outcome.h"
#include "base/quantity.h"

namespace rb {

class Leaving {
 public:
  /// Unless this object goes before, `last_words` are said and the program ends with what they
  /// give.
  Leaving(Seconds at_most, std::function<Exit()> last_words);
  Leaving(const Leaving&) = delete;
  Leaving& operator=(const Leaving&) = delete;
  ~Leaving();

 private:
  std::mutex mutex_;
  std::condition_variable changed_;
  bool done_ = false;  ///< under the mutex
  std::thread thread_;
};

/// Ends the program now, whatever its threads wait for.
[[noreturn]] void leave_now(Exit code);

}  // namespace rb
