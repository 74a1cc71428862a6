// A folder in memory for what a run may write, empty again before each.
#pragma once

#include <stdlib.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "must.h"

namespace rb::fuzz {

namespace fs = std::filesystem;

class Scratch {
 public:
  Scratch() {
    const fs::path memory = "/dev/shm";
    const bool there = access(memory.c_str(), W_OK) == 0;
    auto name = ((there ? memory : fs::temp_directory_path()) / "risebook-fuzz-XXXXXX").string();
    must(mkdtemp(name.data()) != nullptr, "a folder for what is written can be made");
    path_ = name;
    // Whatever looks for the user's own folders or for a display finds these, and none.
    for (const char* home : {"HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME",
                             "XDG_RUNTIME_DIR", "TMPDIR"}) {
      setenv(home, name.c_str(), 1);
    }
    unsetenv("DISPLAY");
    unsetenv("WAYLAND_DISPLAY");
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  ~Scratch() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }

  void empty() const {
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(path_, ignored)) {
      fs::remove_all(entry.path(), ignored);
    }
  }
  void put(const char* name, std::string_view bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
  }
  [[nodiscard]] fs::path operator/(const char* name) const { return path_ / name; }

 private:
  fs::path path_;
};

}  // namespace rb::fuzz
