#include "store/file/entry_now.h"

#include <time.h>

#include <fstream>

namespace rb {

namespace {

std::string boot_id() {
  std::ifstream file("/proc/sys/kernel/random/boot_id");
  std::string id;
  std::getline(file, id);
  return id.empty() ? "unknown" : id;
}

}  // namespace

Entry entry_now() {
  static const std::string boot = boot_id();
  timespec steady{};
  clock_gettime(CLOCK_BOOTTIME, &steady);
  const auto since = std::chrono::seconds{steady.tv_sec} + std::chrono::nanoseconds{steady.tv_nsec};
  return {.wall = std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now()),
          .steady = Seconds{since},
          .boot = boot};
}

}  // namespace rb
