// A process that forks while another of its threads allocates leaves the child a lock that nobody
// holds: seen under the address sanitizer, whose allocator does not mind forks.
#pragma once

#include <doctest/doctest.h>

#include <chrono>
#include <filesystem>
#include <iterator>
#include <thread>

namespace rb::test {

/// Waits until the threads that were joined are gone from the process: it may be forked then.
inline void wait_until_alone() {
  const auto threads = [] {
    return std::distance(std::filesystem::directory_iterator("/proc/self/task"),
                         std::filesystem::directory_iterator{});
  };
  for (int i = 0; i < 1000 && threads() > 1; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  }
  REQUIRE(threads() == 1);
}

}  // namespace rb::test
