// Speed, as ratios to a baseline in the same run: one line a measure, `bench NAME ratio=X goal=Y`.
// Beside them plain tables of how the work grows with the events.
#include <fmt/format.h>

#include <chrono>
#include <functional>

#include "check/check.h"
#include "pour/fold.h"
#include "pour/script.h"
#include "trade/dose.h"

using namespace rb;

namespace {

using Clock = std::chrono::steady_clock;

// The best of several runs, in seconds.
double timed(int runs, const std::function<void()>& work) {
  double best = 1e9;
  for (int i = 0; i < runs; ++i) {
    const auto from = Clock::now();
    work();
    best = std::min(best, std::chrono::duration<double>(Clock::now() - from).count());
  }
  return best;
}

void say(const char* name, double ratio, double goal) {
  fmt::print("bench {} ratio={:.1f} goal={:g}\n", name, ratio, goal);
}

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

// The same by stepping through the pour second by second: every cell that holds plastic concrete
// and is reached by a running motor gets one more.
double simulate(const trade::Face& face) {
  const int nx = 1200;
  const int nz = 240;
  std::vector<float> dose(static_cast<std::size_t>(nx * nz), 0.0F);
  std::vector<double> came(dose.size()), sets(dose.size());
  const auto cell = [&](int ix, int iz) { return static_cast<std::size_t>(iz * nx + ix); };
  for (int iz = 0; iz < nz; ++iz) {
    for (int ix = 0; ix < nx; ++ix) {
      const auto bay = face.bay_at(metres((ix + 0.5) * 0.05));
      const auto reached = face.tops[bay].reached(metres((iz + 0.5) * 0.05));
      came[cell(ix, iz)] = reached ? reached->count() : 1e18;
      sets[cell(ix, iz)] = reached ? (*reached + face.to_set(*reached)).count() : -1e18;
    }
  }
  double end = 0;
  for (const auto& shaker : face.sides[0]) {
    for (const auto& run : shaker.running) end = std::max(end, run.to.count());
  }
  std::vector<std::uint8_t> shaken(dose.size());
  for (double t = 0.5; t < end; t += 1) {
    bool any = false;
    for (const auto& shaker : face.sides[0]) {
      const bool on = std::any_of(
          shaker.running.begin(), shaker.running.end(),
          [&](const trade::Interval& run) { return run.from.count() <= t && t < run.to.count(); });
      if (!on) continue;
      if (!any) std::fill(shaken.begin(), shaken.end(), std::uint8_t{0});
      any = true;
      for (int iz = 0; iz < nz; ++iz) {
        if (!shaker.reaches_z(metres((iz + 0.5) * 0.05))) continue;
        const int from = std::max(0, static_cast<int>((shaker.x - shaker.reach_x).value() / 0.05));
        const int to = std::min(nx, static_cast<int>((shaker.x + shaker.reach_x).value() / 0.05));
        for (int ix = from; ix < to; ++ix) shaken[cell(ix, iz)] = 1;
      }
    }
    if (!any) continue;
    for (std::size_t i = 0; i < dose.size(); ++i) {
      if (shaken[i] != 0 && came[i] <= t && t <= sets[i]) dose[i] += 1.0F;
    }
  }
  double sum = 0;
  for (const float d : dose) sum += static_cast<double>(d);
  return sum / static_cast<double>(dose.size());
}

void bench_field() {
  const trade::Face face = long_wall();
  std::vector<trade::Band> all;
  for (const auto& top : face.tops) all.push_back({metres(0), top.standing()});
  double exact_mean = 0;
  const double exact = timed(9, [&] {
    exact_mean = in_seconds(*trade::dose_shares(trade::dose_field(face), all, seconds(90)).mean);
  });
  double stepped_mean = 0;
  const double stepped = timed(1, [&] { stepped_mean = simulate(face); });
  fmt::print(
      "field 60 x 12 m, 400 runs: exact {:.3f} ms (mean {:.3f} s), by the second {:.0f} ms "
      "(mean {:.3f} s)\n",
      exact * 1e3, exact_mean, stepped * 1e3, stepped_mean);
  std::fflush(stdout);
  say("dose_field_vs_one_second_simulation", stepped / exact, 1000);
}

// A pour of `count` events: lifts of 40 events each (readings, runs, notes).
std::vector<Event> long_pour(std::size_t count) {
  std::string text =
      R"({"at":"2026-03-02T00:00:00.000Z","by":"f","do":"pour-open","pour":"B","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}],"elements":[{"id":"W","length":60,"height":190,"thickness":0.3,"bays":[6,6,6,6,6,6,6,6,6,6],"form_rating_kpa":60,"rows":[)";
  for (int r = 0; r < 24; ++r) {
    text += fmt::format(R"({}{{"id":"R{}","z":{},"serves":[{}],"motors":[)", r ? "," : "", r,
                        0.25 + 0.5 * r, r + 1);
    for (int m = 0; m < 40; ++m) {
      text += fmt::format(R"({}{{"id":"M{}","x":{},"reach_x":0.9,"reach_z":0.75}})", m ? "," : "",
                          m, 0.75 + 1.5 * m);
    }
    text += "]}";
  }
  text += "]}]}}\n";
  std::vector<Event> events = read_script(text, "bench")->events;
  Moment at = events.front().at;
  const auto add = [&](Happening what) {
    at += std::chrono::seconds{20};
    events.push_back({EventId{std::to_string(events.size())},
                      at,
                      PersonId{"f"},
                      std::move(what),
                      {},
                      std::nullopt});
  };
  const std::size_t lifts = std::max<std::size_t>(1, count / 40);
  for (std::size_t lift = 1; events.size() + 40 <= count; ++lift) {
    const double rise = std::min(0.5, 12.0 / static_cast<double>(lifts));
    const double z = rise * static_cast<double>(lift);
    const int number = static_cast<int>(lift);
    const RowId row{fmt::format("R{}", std::min(23, static_cast<int>(z / 0.5)))};
    const RowPlace place{ElementId{"W"}, Side::near_side, row};
    add(event::LiftStart{ElementId{"W"}, number});
    add(event::Top{ElementId{"W"}, metres(z - rise / 2), std::nullopt});
    add(event::LiftEnd{ElementId{"W"}, number, metres(z), std::nullopt});
    for (int i = 0; i < 12; ++i) {
      add(event::Run{place, vibrations_per_minute(6000)});
      add(event::Rest{place});
      add(event::Note{"at bay " + std::to_string(i), std::nullopt, std::nullopt});
    }
    add(event::AirTemp{celsius(12)});
  }
  return events;
}

void bench_growth() {
  fmt::print("{:>8}  {:>10}  {:>10}  {:>12}  {:>10}\n", "events", "fold ms", "check ms",
             "one tap ms", "lifts");
  for (const std::size_t count : {1000U, 5000U, 10000U}) {
    const std::vector<Event> events = long_pour(count);
    std::optional<PourState> state;
    const double folded = timed(3, [&] { state = *fold(events); });
    const double checked = timed(2, [&] { (void)check(*state, AsOf::end(*state)); });
    Event tap = events.back();
    const double one = timed(1, [&] {
      extend(*state, tap);
      (void)check(*state, AsOf::end(*state));
    });
    fmt::print("{:>8}  {:>10.2f}  {:>10.2f}  {:>12.2f}  {:>10}\n", events.size(), folded * 1e3,
               checked * 1e3, one * 1e3, state->elements[0].lifts.size());
    if (count == 5000U) say("recheck_after_one_tap_within_1_ms", 1e-3 / one, 1);
  }
}

}  // namespace

int main() {
  bench_field();
  bench_growth();
  return 0;
}
