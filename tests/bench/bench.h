// Speed, as ratios to a baseline measured in the same run. A bench has a name, a goal and a
// function that gives the ratio; smaller is better, always. One stands in any file of this folder
// as
//
//   const bench::Bench tap{"tap-to-durable", 1.15, [] { return ...; }};
//
// and the runner (main.cpp) prints `bench NAME ratio=X goal<=Y` for each.
#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

namespace bench {

enum class Needs { nothing, display };

/// Puts itself on the runner's list when it is made; lives as long as the program.
struct Bench {
  Bench(std::string name, double goal, std::function<double()> ratio, Needs needs = Needs::nothing);
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  std::string name;
  double goal;
  std::function<double()> ratio;  ///< throws Trouble when it cannot be measured
  Needs needs;
};

/// All benches, by name.
std::vector<const Bench*> all();

/// Why a ratio cannot be had, in plain words.
struct Trouble : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Seconds of the processor this program has used, all its threads: what else the machine does is
/// not counted.
double cpu_seconds();
/// Seconds on the steady clock.
double wall_seconds();

/// The least seconds of the processor one of several runs took.
double best_of(int runs, const std::function<void()>& work);

/// The same of two works, run by turns so that both meet the machine in the same mood.
struct Pair {
  double work = 0, baseline = 0;
  [[nodiscard]] double ratio() const { return work / baseline; }
};
Pair side_by_side(int runs, const std::function<void()>& work,
                  const std::function<void()>& baseline);

}  // namespace bench
