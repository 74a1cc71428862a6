// A folder of a test's own, gone with it.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <string>

namespace rb::test {

struct TempFolder {
  TempFolder() {
    static int count = 0;
    path = std::filesystem::temp_directory_path() /
           ("risebook-app-" + std::to_string(getpid()) + "-" + std::to_string(count++));
    std::filesystem::create_directories(path);
  }
  ~TempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  std::filesystem::path path;
};

}  // namespace rb::test
