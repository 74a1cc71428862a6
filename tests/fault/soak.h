// Counts that are small in every run of the tests and great when asked for: RISEBOOK_ROUNDS says
// how often a test repeats what it does, and the line it prints at the end says how often it did.
// `cmake --build build --target soak` asks for the great ones and gathers the lines.
#pragma once

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace rb::soak {

// Under a sanitizer, which makes each ten times as long, every sixteenth.
#ifdef RISEBOOK_SANITIZED
inline constexpr int kEvery = 16;
#else
inline constexpr int kEvery = 1;
#endif

inline int rounds(int few) {
  const char* given = std::getenv("RISEBOOK_ROUNDS");
  return given ? std::atoi(given) : std::max(1, few / kEvery);
}

inline void tell(const char* name, long done, long failed) {
  std::printf("soak %s done=%ld failed=%ld\n", name, done, failed);
  std::fflush(stdout);
}

}  // namespace rb::soak
