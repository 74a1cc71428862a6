#include <cstdio>
#include <exception>

#include "cli/cli.h"

namespace {

int output_failed() {
  std::fputs("risebook: standard output: cannot be written. Is the disk full?\n", stderr);
  return 2;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    const int code = rb::run_cli(argc, argv);
    return std::fflush(stdout) == 0 && std::ferror(stdout) == 0 ? code : output_failed();
  } catch (const std::exception& error) {
    if (std::ferror(stdout) != 0) return output_failed();
    // What a user can cause never comes this way: a disk or a mistake of ours does.
    std::fprintf(stderr, "risebook: internal trouble: %s\n", error.what());
    return 3;
  }
}
