#include "bench/bench.h"

#include <algorithm>
#include <chrono>
#include <ctime>
#include <limits>
#include <utility>

namespace bench {

namespace {

std::vector<const Bench*>& registered() {
  static std::vector<const Bench*> benches;
  return benches;
}

double cpu_of(const std::function<void()>& work) {
  const double from = cpu_seconds();
  work();
  return cpu_seconds() - from;
}

}  // namespace

Bench::Bench(std::string its_name, double its_goal, std::function<double()> its_ratio,
             Needs its_needs)
    : name(std::move(its_name)), goal(its_goal), ratio(std::move(its_ratio)), needs(its_needs) {
  registered().push_back(this);
}

std::vector<const Bench*> all() {
  std::vector<const Bench*> benches = registered();
  std::sort(benches.begin(), benches.end(),
            [](const Bench* a, const Bench* b) { return a->name < b->name; });
  return benches;
}

double cpu_seconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

double wall_seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double best_of(int runs, const std::function<void()>& work) {
  double best = std::numeric_limits<double>::max();
  for (int i = 0; i < runs; ++i) best = std::min(best, cpu_of(work));
  return best;
}

Pair side_by_side(int runs, const std::function<void()>& work,
                  const std::function<void()>& baseline) {
  Pair best{std::numeric_limits<double>::max(), std::numeric_limits<double>::max()};
  for (int i = 0; i < runs; ++i) {
    best.baseline = std::min(best.baseline, cpu_of(baseline));
    best.work = std::min(best.work, cpu_of(work));
  }
  return best;
}

}  // namespace bench
