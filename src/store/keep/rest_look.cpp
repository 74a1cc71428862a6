#include "store/keep/rest_look.h"

#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <mutex>
#include <utility>

#include "store/book/logbook.h"
#include "store/file/side_thread.h"

namespace rb::store {

namespace {

using Steady = std::chrono::steady_clock;

constexpr int kLeastPressing = 19;  // of what the system shares processors by

}  // namespace

struct RestLook::Inside {
  const std::filesystem::path book;
  const std::function<void()> wake;
  const Seconds rest;
  std::atomic<bool> give_way{false};

  std::mutex mutex;
  // Under the mutex:
  Steady::time_point last_tap = Steady::now();
  bool done = false, gone = false;
  std::optional<std::vector<std::string>> found;

  Inside(std::filesystem::path at, std::function<void()> waker, Seconds resting)
      : book(std::move(at)), wake(std::move(waker)), rest(resting) {}

  /// How long to wait yet; none: it is done for good.
  std::optional<Seconds> turn() {
    {
      const std::lock_guard lock(mutex);
      if (done || gone) return std::nullopt;
      const Seconds rested = Steady::now() - last_tap;
      if (rested < rest) return rest - rested;
      give_way = false;
    }
    (void)setpriority(PRIO_PROCESS, static_cast<id_t>(syscall(SYS_gettid)), kLeastPressing);
    auto faults = look();
    const std::lock_guard lock(mutex);
    if (give_way || gone) return rest;
    done = true;
    if (!faults) return std::nullopt;  // what cannot be opened is told by who writes
    found = std::move(*faults);
    if (wake && !found->empty()) wake();
    return std::nullopt;
  }

  Result<std::vector<std::string>> look() {
    const auto opened = Logbook::open(book, Access::read);
    if (!opened) return Failed{opened.error()};
    return opened->look_closely(give_way);
  }
};

RestLook::RestLook(std::filesystem::path book, std::function<void()> wake, Seconds rest)
    : inside_(std::make_shared<Inside>(std::move(book), std::move(wake), rest)),
      thread_(std::make_unique<SideThread>(
          [inside = inside_](bool /*stopping*/) { return inside->turn(); })) {}

RestLook::~RestLook() {
  const std::lock_guard lock(inside_->mutex);
  inside_->gone = true;
  inside_->give_way = true;
}

void RestLook::tapped() {
  const std::lock_guard lock(inside_->mutex);
  inside_->last_tap = Steady::now();
  inside_->give_way = true;
}

std::optional<std::vector<std::string>> RestLook::take() {
  const std::lock_guard lock(inside_->mutex);
  return std::exchange(inside_->found, std::nullopt);
}

}  // namespace rb::store
