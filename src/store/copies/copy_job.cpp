#include "store/copies/copy_job.h"

#include <mutex>
#include <utility>

namespace rb::store {

struct CopyJob::Inside {
  mutable std::mutex mutex;
  Status status;
  bool stop = false;
  std::function<void()> wake;

  /// Takes note and tells, unless whoever asked is gone; false then.
  template <class Change>
  bool take(Change&& change) {
    const std::lock_guard lock(mutex);
    change(status);
    if (!stop && wake) wake();
    return !stop;
  }
};

CopyJob::CopyJob(std::filesystem::path book, std::filesystem::path folder,
                 std::function<void()> wake)
    : inside_(std::make_shared<Inside>()) {
  inside_->wake = std::move(wake);
  thread_ = std::make_unique<SideThread>(
      [inside = inside_, from = std::move(book), to = std::move(folder),
       begun = false](bool stopping) mutable -> std::optional<Seconds> {
        if (begun || stopping) return std::nullopt;
        begun = true;
        auto end = copy_book(from, to, [&](double done) {
          return inside->take([&](Status& status) { status.done = done; });
        });
        inside->take([&](Status& status) { status.end = std::move(end); });
        return std::nullopt;
      });
}

CopyJob::~CopyJob() {
  {
    const std::lock_guard lock(inside_->mutex);
    inside_->stop = true;
  }
  thread_.reset();
}

CopyJob::Status CopyJob::status() const {
  const std::lock_guard lock(inside_->mutex);
  return inside_->status;
}

}  // namespace rb::store
