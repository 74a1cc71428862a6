#include <cstdio>
#include <exception>

#include "app/cli.h"

int main(int argc, char** argv) {
  try {
    return rb::run_cli(argc, argv);
  } catch (const std::exception& error) {
    // What a user can cause never comes this way: a disk or a mistake of ours does.
    std::fprintf(stderr, "risebook: internal trouble: %s\n", error.what());
    return 3;
  }
}
