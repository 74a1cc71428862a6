// Runs the benches and prints one line each, `bench NAME ratio=X goal<=Y`; a goal missed is marked,
// for the machines are noisy, and only past three times a goal the run has failed.
//   risebook_bench [--list] [--strict] [--no-display] [WORD...]
// A WORD runs those whose name holds it. --strict: a goal missed is a failure already. Exit codes:
// 0 fine, 1 a goal missed too far, 2 something could not be measured.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "bench/bench.h"

namespace {

constexpr double kTooFar = 3;

struct Wish {
  bool list = false, strict = false, display = true;
  std::vector<std::string_view> words;

  [[nodiscard]] bool wants(const bench::Bench& one) const {
    return words.empty() || std::any_of(words.begin(), words.end(), [&](std::string_view word) {
             return one.name.find(word) != std::string::npos;
           });
  }
};

// 0, 1 or 2, as the exit code.
int run(const bench::Bench& one, bool strict) {
  try {
    const double ratio = one.ratio();
    if (!std::isfinite(ratio)) throw bench::Trouble("the ratio is no number");
    const bool missed = ratio > one.goal;
    const bool failed = missed && (strict || ratio > kTooFar * one.goal);
    fmt::print("bench {} ratio={:.5g} goal<={:g}{}\n", one.name, ratio, one.goal,
               failed   ? "  FAILED"
               : missed ? "  missed"
                        : "");
    std::fflush(stdout);
    return failed ? 1 : 0;
  } catch (const std::exception& trouble) {
    fmt::print("bench {} not measured: {}\n", one.name, trouble.what());
    std::fflush(stdout);
    return 2;
  }
}

}  // namespace

int main(int argc, char** argv) {
  Wish wish;
  for (int i = 1; i < argc; ++i) {
    const std::string_view said = argv[i];
    if (said == "--list") {
      wish.list = true;
    } else if (said == "--strict") {
      wish.strict = true;
    } else if (said == "--no-display") {
      wish.display = false;
    } else if (said.starts_with("-")) {
      fmt::print(stderr, "risebook_bench [--list] [--strict] [--no-display] [WORD...]\n");
      return 2;
    } else {
      wish.words.push_back(said);
    }
  }
  const bool display = wish.display && std::getenv("DISPLAY") != nullptr;
  int worst = 0;
  for (const bench::Bench* one : bench::all()) {
    if (!wish.wants(*one)) continue;
    if (wish.list) {
      fmt::print("{} goal<={:g}\n", one->name, one->goal);
    } else if (one->needs == bench::Needs::display && !display) {
      fmt::print("bench {} left out: it needs a display\n", one->name);
      if (wish.display) worst = 2;  // asked for, but there is none
    } else {
      worst = std::max(worst, run(*one, wish.strict));
    }
  }
  return worst;
}
