// The real program, run on a disk that misbehaves (preloaded/disk_shim.cpp), as a user would run
// it.
#pragma once

#include <doctest/doctest.h>
#include <sys/wait.h>

#include <cstdlib>
#include <fstream>
#include <string>

#include "../../store/samples.h"

namespace rb::faults {

struct Ran {
  int code = 0;      ///< the exit code
  std::string told;  ///< what it printed, errors and all
  [[nodiscard]] bool says(const char* words) const { return told.find(words) != std::string::npos; }
};

/// A folder on the disk that misbehaves, and one beside it on a good one.
class BadDisk {
 public:
  BadDisk() { std::filesystem::create_directory(disk()); }

  [[nodiscard]] std::filesystem::path disk() const { return folder_ / "disk"; }
  [[nodiscard]] std::filesystem::path good(const char* name) const { return folder_ / name; }
  [[nodiscard]] std::string book() const { return (disk() / "a.risebook").string(); }

  /// How the disk is from here on; "" is well. The words are those of preloaded/disk_shim.cpp.
  void is(const std::string& says) const {
    // Put in place whole, for a program that may be looking.
    std::ofstream(good("says.new")) << says;
    std::filesystem::rename(good("says.new"), good("says"));
  }

  /// `words`: the command line after the program's name, as for a shell.
  [[nodiscard]] Ran run(const std::string& words) const {
    // Where the program is watched for wrong memory, what is preloaded may stand before the
    // watcher.
    const std::string command =
        "ASAN_OPTIONS=verify_asan_link_order=0:detect_leaks=0 RISEBOOK_DISK='" + disk().string() +
        "' RISEBOOK_DISK_SAYS='" + good("says").string() + "' XDG_CONFIG_HOME='" +
        good("config").string() + "' XDG_DATA_HOME='" + good("data").string() +
        "' LD_PRELOAD='" RISEBOOK_DISK_SHIM "' '" RISEBOOK_PROGRAM "' " + words + " >'" +
        good("told").string() + "' 2>&1";
    const int status = std::system(command.c_str());
    REQUIRE(WIFEXITED(status));
    return {WEXITSTATUS(status), samples::bytes_of(good("told"))};
  }

  /// The same on a disk that is well, whatever it was.
  [[nodiscard]] Ran run_well(const std::string& words) const {
    is("");
    return run(words);
  }

 private:
  samples::Folder folder_;
};

}  // namespace rb::faults
