#include "store/keep/reader.h"

#include <chrono>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

namespace rb {

struct Reader::Inside {
  const std::filesystem::path path;
  const std::function<void()> wake;

  std::mutex mutex;
  std::condition_variable work, settled;
  // Under the mutex:
  std::deque<Job> jobs;
  std::vector<Delivery> done;
  bool busy = false, stop = false;

  std::thread thread;

  Inside(std::filesystem::path at, std::function<void()> waker)
      : path(std::move(at)), wake(std::move(waker)) {}

  void run() {
    std::optional<Result<Logbook>> book;
    std::unique_lock lock(mutex);
    for (;;) {
      work.wait(lock, [&] { return stop || !jobs.empty(); });
      if (stop) return;
      const Job job = std::move(jobs.front());
      jobs.pop_front();
      busy = true;
      lock.unlock();
      // A book that could not be opened may be there by now.
      if (!book || !*book) book.emplace(Logbook::open(path, Access::read));
      Delivery delivery = job(*book);
      lock.lock();
      busy = false;
      if (delivery) done.push_back(std::move(delivery));
      settled.notify_all();
      lock.unlock();
      if (wake) wake();
      lock.lock();
    }
  }
};

Reader::Reader(std::filesystem::path book, std::function<void()> wake)
    : inside_(std::make_unique<Inside>(std::move(book), std::move(wake))) {
  inside_->thread = std::thread([in = inside_.get()] { in->run(); });
}

Reader::~Reader() {
  {
    const std::lock_guard lock(inside_->mutex);
    inside_->stop = true;
  }
  inside_->work.notify_all();
  inside_->thread.join();
}

void Reader::ask(Job job) {
  {
    const std::lock_guard lock(inside_->mutex);
    inside_->jobs.push_back(std::move(job));
  }
  inside_->work.notify_all();
}

void Reader::deliver() {
  std::vector<Delivery> ready;
  {
    const std::lock_guard lock(inside_->mutex);
    ready = std::exchange(inside_->done, {});
  }
  for (const Delivery& one : ready) one();
}

bool Reader::settle(Seconds at_most) {
  std::unique_lock lock(inside_->mutex);
  return inside_->settled.wait_for(
      lock, std::chrono::duration_cast<std::chrono::steady_clock::duration>(at_most),
      [&] { return inside_->jobs.empty() && !inside_->busy; });
}

}  // namespace rb
