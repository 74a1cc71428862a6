#include "app/opening.h"

#include <utility>

namespace rb {

Opening::Opening(Open open, std::function<void()> wake)
    : thread_([this, open = std::move(open), wake = std::move(wake)] {
        auto done = open();
        {
          const std::lock_guard lock(mutex_);
          done_.emplace(std::move(done));
        }
        if (wake) wake();
      }) {}

Opening::~Opening() {
  if (thread_.joinable()) thread_.join();
}

std::optional<Result<Opening::Opened>> Opening::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(done_, std::nullopt);
}

Result<Opening::Opened> Opening::wait() {
  thread_.join();
  auto done = take();
  if (!done) return fail(Error::Kind::book, {}, said("the book was taken already"));
  return std::move(*done);
}

}  // namespace rb
