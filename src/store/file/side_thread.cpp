#include "store/file/side_thread.h"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <utility>

namespace rb::store {

namespace {
constexpr std::chrono::seconds kPatience{2};
}

struct SideThread::Shared {
  std::mutex mutex;
  std::condition_variable changed;
  bool woken = true;  ///< the first turn is taken at once
  bool stop = false, done = false;
};

SideThread::SideThread(Turn turn) : shared_(std::make_shared<Shared>()) {
  std::thread([shared = shared_, work = std::move(turn)]() mutable {
    std::unique_lock lock(shared->mutex);
    for (bool stopping = false; !stopping;) {
      shared->woken = false;
      stopping = shared->stop;
      lock.unlock();
      const auto rest = work(stopping);
      if (stopping) work = {};  // what it owns goes before this is called done
      lock.lock();
      if (stopping) break;
      const auto ready = [&] { return shared->woken || shared->stop; };
      if (rest) {
        shared->changed.wait_for(lock, std::chrono::duration<double>(rest->count()), ready);
      } else {
        shared->changed.wait(lock, ready);
      }
    }
    shared->done = true;
    shared->changed.notify_all();
  }).detach();
}

SideThread::~SideThread() {
  std::unique_lock lock(shared_->mutex);
  shared_->stop = true;
  shared_->changed.notify_all();
  shared_->changed.wait_for(lock, kPatience, [&] { return shared_->done; });
}

void SideThread::wake() {
  const std::lock_guard lock(shared_->mutex);
  shared_->woken = true;
  shared_->changed.notify_all();
}

}  // namespace rb::store
