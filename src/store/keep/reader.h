// The reader of a book: a thread of its own with a connection of its own that only reads, for lists
// and pours, so that nobody who draws waits for the disk.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include "base/result.h"
#include "store/book/logbook.h"

namespace rb {

class Reader {
 public:
  /// What a job leaves to be done by the thread that calls deliver().
  using Delivery = std::function<void()>;
  /// Runs on the reader's thread, with the book or why it cannot be opened. Must not throw.
  using Job = std::function<Delivery(const Result<Logbook>&)>;

  /// The book is opened by the first job. `wake` is called on the reader's thread after each job.
  Reader(std::filesystem::path book, std::function<void()> wake);
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;
  /// Jobs not begun are dropped; the one under way is waited for.
  ~Reader();

  void ask(Job job);
  /// Hands over what is done, on the caller's thread.
  void deliver();
  /// Waits until every job asked for is done (not delivered), at most so long.
  bool settle(Seconds at_most);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace rb
