// A thread that does one thing over and over, beside what must never wait for it.
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "base/quantity.h"

namespace rb::store {

class SideThread {
 public:
  /// One turn of the work; gives how long to rest before the next unless woken, none = until woken.
  /// `stopping`: the last turn. It must own all it uses: a turn that hangs in a dead disk outlives
  /// this object.
  using Turn = std::function<std::optional<Seconds>(bool stopping)>;

  explicit SideThread(Turn turn);
  SideThread(const SideThread&) = delete;
  SideThread& operator=(const SideThread&) = delete;
  /// Asks for the last turn and waits for it, two seconds at most.
  ~SideThread();
  void wake();

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
};

}  // namespace rb::store
