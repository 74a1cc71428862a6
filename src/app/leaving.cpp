#include "app/leaving.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <utility>

namespace rb {

Leaving::Leaving(Seconds at_most, std::function<Exit()> last_words)
    : thread_([this, at_most, last_words = std::move(last_words)] {
        std::unique_lock lock(mutex_);
        const auto span = std::chrono::duration_cast<std::chrono::steady_clock::duration>(at_most);
        if (changed_.wait_for(lock, span, [this] { return done_; })) return;
        leave_now(last_words());
      }) {}

Leaving::~Leaving() {
  {
    const std::lock_guard lock(mutex_);
    done_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void leave_now(Exit code) {
  (void)std::fflush(nullptr);
  std::_Exit(static_cast<int>(code));
}

}  // namespace rb
