// Counts that are small in every run of the tests and great when asked for: RISEBOOK_ROUNDS says
// how often a test repeats what it does, and the line it prints at the end says how often it did.
// `cmake --build build --target soak` asks for the great ones and gathers the lines.
#pragma once

#include <cstdio>
#include <cstdlib>

namespace rb::soak {

inline int rounds(int few) {
  const char* given = std::getenv("RISEBOOK_ROUNDS");
  return given ? std::atoi(given) : few;
}

inline void tell(const char* name, long done, long failed) {
  std::printf("soak %s done=%ld failed=%ld\n", name, done, failed);
  std::fflush(stdout);
}

}  // namespace rb::soak
