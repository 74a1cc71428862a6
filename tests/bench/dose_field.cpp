// The dose over a whole face against what it would take to step through the pour second by second.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "bench/bench.h"
#include "trade/dose/dose.h"

using namespace rb;

namespace {

// A wall of 60 x 12 m: 20 bays, 24 rows a metre and a half apart along, 400 runs.
trade::Face long_wall() {
  trade::Face face;
  constexpr int kBays = 20;
  constexpr int kLifts = 24;
  constexpr int kRows = 24;
  for (int b = 0; b < kBays; ++b) {
    face.bays.push_back(metres(3));
    trade::TopCurve& top = face.tops.emplace_back();
    for (int lift = 0; lift < kLifts; ++lift) {
      const double start = lift * 1800.0 + b * 11;
      top.stand(seconds(start));
      top.read(seconds(start + 700), metres(lift * 0.5 + 0.27));
      top.read(seconds(start + 1400), metres(lift * 0.5 + 0.5));
    }
  }
  face.sides.emplace_back();
  for (int r = 0; r < kRows; ++r) {
    std::vector<trade::Interval> running;
    for (int n = 0; n < (r < 16 ? 17 : 16); ++n) {
      const double from = (r + n % 3) * 1800.0 + 1405 + (n / 3) * 60;
      running.push_back({seconds(from), seconds(from + 100 - n)});
    }
    for (int m = 0; m < 40; ++m) {
      face.sides[0].push_back(
          {metres(0.75 + 1.5 * m), metres(0.25 + 0.5 * r), metres(0.9), metres(0.75), running});
    }
  }
  face.sets = {{seconds(-1e9), seconds(18000)}, {seconds(20000), seconds(16000)}};
  return face;
}

// The same by stepping through the pour second by second, over cells of 50 mm: each that holds
// plastic concrete and is reached by a running motor gets one more. As sparing as a simulation can
// be: a second touches the cells reached in it and no others, each once.
class Simulation {
 public:
  explicit Simulation(const trade::Face& face) : face_(face) {
    came_.resize(kAlong * kUp);
    sets_.resize(came_.size());
    dose_.resize(came_.size());
    for (std::size_t iz = 0; iz < kUp; ++iz) {
      for (std::size_t ix = 0; ix < kAlong; ++ix) {
        const auto& top = face.tops[face.bay_at(middle(ix))];
        const auto reached = top.reached(middle(iz));
        came_[iz * kAlong + ix] = static_cast<float>(reached ? reached->count() : 1e18);
        sets_[iz * kAlong + ix] =
            static_cast<float>(reached ? face.sets_at(*reached).count() : -1e18);
      }
    }
    reached_.resize(kUp);
  }

  double mean() {
    const auto& motors = face_.sides[0];
    double end = 0;
    for (const auto& motor : motors) end = std::max(end, motor.running.spans().back().to.count());
    std::vector<std::size_t> next(motors.size(), 0);  // of each motor's runs
    for (double t = 0.5; t < end; t += 1) {
      for (std::size_t m = 0; m < motors.size(); ++m) {
        const auto& runs = motors[m].running.spans();
        while (next[m] < runs.size() && runs[next[m]].to.count() <= t) ++next[m];
        if (next[m] < runs.size() && runs[next[m]].from.count() <= t) reach(motors[m]);
      }
      add_second(static_cast<float>(t));
    }
    double sum = 0;
    for (const int dose : dose_) sum += dose;
    return sum / static_cast<double>(dose_.size());
  }

 private:
  static constexpr std::size_t kAlong = 1200, kUp = 240;
  struct Cells {
    std::size_t from, to;
  };

  static Length middle(std::size_t cell) {
    return trade::kDoseCell * (static_cast<double>(cell) + 0.5);
  }
  // The first cell whose middle is not left of (below) a place.
  static std::size_t first(Length place) {
    return static_cast<std::size_t>(std::max(0.0, std::ceil(place / trade::kDoseCell - 0.5)));
  }

  // The motors stand from left to right: what one reaches begins inside what the last reached, or
  // right of it.
  void reach(const trade::Shaker& motor) {
    const Cells along{first(motor.x - motor.reach_x),
                      std::min(first(motor.x + motor.reach_x), kAlong)};
    const std::size_t top = std::min(first(motor.z + motor.reach_z), kUp);
    for (std::size_t iz = first(motor.z - motor.reach_z); iz < top; ++iz) {
      auto& cells = reached_[iz];
      if (cells.empty() || along.from > cells.back().to) {
        cells.push_back(along);
      } else if (along.from < cells.back().from) {  // a second row reaches here too
        cells.back().from = along.from;
        cells.back().to = std::max(cells.back().to, along.to);
      } else {
        cells.back().to = std::max(cells.back().to, along.to);
      }
    }
  }

  void add_second(float t) {
    for (std::size_t iz = 0; iz < kUp; ++iz) {
      for (const Cells& cells : reached_[iz]) {
        const std::size_t end = iz * kAlong + cells.to;
        for (std::size_t i = iz * kAlong + cells.from; i < end; ++i) {
          dose_[i] += static_cast<int>(came_[i] <= t) & static_cast<int>(t <= sets_[i]);
        }
      }
      reached_[iz].clear();
    }
  }

  const trade::Face& face_;
  std::vector<float> came_, sets_;
  std::vector<int> dose_;
  std::vector<std::vector<Cells>> reached_;  // in the second at hand, by height
};

double field_against_simulation() {
  const trade::Face face = long_wall();
  std::vector<trade::Band> all;
  for (const auto& top : face.tops) all.push_back({metres(0), top.standing()});
  double exact_mean = 0, stepped_mean = 0;
  const double exact = bench::best_of(30, [&] {
    exact_mean = in_seconds(*trade::dose_shares(trade::dose_field(face), all, seconds(90)).mean);
  });
  const double stepped = bench::best_of(2, [&] { stepped_mean = Simulation{face}.mean(); });
  fmt::print(
      "field 60 x 12 m, 400 runs: exact {:.3f} ms (mean {:.3f} s), by the second {:.0f} ms "
      "(mean {:.3f} s)\n",
      exact * 1e3, exact_mean, stepped * 1e3, stepped_mean);
  if (std::abs(exact_mean - stepped_mean) > 1) throw bench::Trouble("the two doses differ");
  return exact / stepped;
}

const bench::Bench field{"dose-field-to-simulation", 0.001, field_against_simulation};

}  // namespace
