// Speed, as ratios to a baseline in the same run: one line a measure, `bench NAME ratio=X goal=Y`.
// Beside them plain tables of how the work grows with the events.
#include <fmt/format.h>

#include <ctime>
#include <functional>

#include "check/check.h"
#include "pour/fold.h"
#include "pour/script.h"
#include "trade/dose.h"

using namespace rb;

namespace {

// Processor time, so that what else the machine does is not counted.
double processor_seconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

// The best of several runs, in seconds of the processor.
double timed(int runs, const std::function<void()>& work) {
  double best = 1e9;
  for (int i = 0; i < runs; ++i) {
    const double from = processor_seconds();
    work();
    best = std::min(best, processor_seconds() - from);
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

// A pour of about `count` events: walls of 60 x 12 m one after the other, 24 lifts of half a metre
// each, ten bays read one by one, rows of 40 motors hung with cables, run for two lifts each and
// moved up; trucks, tests and notes between. A wall is some 5,000 events.
class LongPour {
 public:
  explicit LongPour(std::size_t count) {
    const std::size_t walls = std::max<std::size_t>(1, (count + 2500) / 5000);
    const std::size_t a_wall = count / walls;
    events = read_script(opening(walls), "bench")->events;
    for (std::size_t w = 1; w <= walls; ++w) wall(fmt::format("W{}", w), a_wall);
  }
  std::vector<Event> events;

 private:
  static constexpr int kLifts = 24;

  static std::string opening(std::size_t walls) {
    std::string text =
        R"({"at":"2026-03-02T00:00:00.000Z","by":"f","do":"pour-open","pour":"B","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}],"power":[{"id":"I1","volts":42,"max_amps":900,"motors":["M1","M2"]}],"motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000},"elements":[)";
    for (std::size_t w = 1; w <= walls; ++w) {
      text += fmt::format(
          R"({}{{"id":"W{}","length":60,"height":12,"thickness":0.3,"bays":[6,6,6,6,6,6,6,6,6,6],"form_rating_kpa":300,"rows":[)",
          w > 1 ? "," : "", w);
      for (int r = 0; r < kLifts; ++r) {
        text += fmt::format(R"({}{{"id":"R{}","z":{},"serves":[{},{}],"motors":[)", r ? "," : "",
                            r + 1, 0.25 + 0.5 * r, r + 1, r + 2);
        for (int m = 0; m < 40; ++m) {
          text += fmt::format(R"({}{{"id":"M{}","x":{},"reach_x":0.9,"reach_z":0.75}})",
                              m ? "," : "", m, 0.75 + 1.5 * m);
        }
        text += "]}";
      }
      text += "]}";
    }
    return text + "]}}\n";
  }

  void add(Happening what, int pause = 9) {
    at_ += std::chrono::seconds{pause};
    events.push_back({EventId{std::to_string(events.size())},
                      at_,
                      PersonId{"f"},
                      std::move(what),
                      {},
                      std::nullopt});
  }

  void run(const ElementId& wall, int row) {
    if (row < 1) return;
    const RowPlace place{wall, Side::near_side, RowId{fmt::format("R{}", row)}};
    add(event::Run{place, vibrations_per_minute(6000)}, 3);
    add(event::Rest{place}, 50);
  }

  void wall(const std::string& id, std::size_t count) {
    const ElementId wall{id};
    std::vector<MotorId> motors;
    for (int m = 0; m < 40; ++m) motors.push_back(MotorId{fmt::format("M{}", m)});
    const std::size_t until = events.size() + count;
    for (int lift = 1; lift <= kLifts; ++lift) {
      const std::size_t end = until - count * static_cast<std::size_t>(kLifts - lift) / kLifts;
      const RowPlace row{wall, Side::near_side, RowId{fmt::format("R{}", lift)}};
      add(event::Hang{row, motors, true});
      add(event::LiftStart{wall, lift});
      const double low = 0.5 * (lift - 1);
      for (int part = 1; part <= 4; ++part) {
        for (int bay = 1; bay <= 10; ++bay) add(event::Top{wall, metres(low + 0.1 * part), bay});
      }
      add(event::LiftEnd{wall, lift, metres(low + 0.5), std::nullopt});
      for (int pass = 0; pass < 2; ++pass) {
        run(wall, lift - 1);
        run(wall, lift);
      }
      for (int n = 0; events.size() < end; ++n) {  // the rest of the lift's taps
        const TicketId ticket{fmt::format("{}-{}-{}", id, lift, n)};
        switch (n % 8) {
          case 0:
            add(event::Truck{ticket, MixId{"C"}, cubic_metres(2), at_, at_});
            break;
          case 1:
            add(event::Discharge{TicketId{fmt::format("{}-{}-{}", id, lift, n - 1)}, wall,
                                 std::nullopt});
            break;
          case 2:
            add(event::Test{TicketId{fmt::format("{}-{}-{}", id, lift, n - 2)}, metres(0.12),
                            celsius(20 + (lift % 2)), std::nullopt, std::nullopt});
            break;
          case 3:
            add(event::Note{"seen", wall, lift});
            break;
          default:
            run(wall, lift);
            ++n;
        }
      }
    }
  }

  Moment at_ = *parse_moment("2026-03-02T00:00:00.000Z");
};

// One more run of the row last hung: its rest is the tap that is timed, live, as on the tablet.
struct Taps {
  double fold = 0, check = 0, tap = 0, remembered = 0;
  std::size_t findings = 0;
};

Taps measure(const std::vector<Event>& events) {
  Taps taps;
  PourState state;
  taps.fold = timed(1, [&] { state = *fold(events); });
  taps.check = timed(2, [&] { taps.findings = check(state, AsOf::end(state)).findings.size(); });
  CheckMemory memory;
  const RunState& last = state.runs.back();
  const RowPlace row{state.plan->elements[last.element].id, Side::near_side,
                     state.plan->elements[last.element].rows[last.row].id};
  Moment at = state.moment(state.last);
  (void)check(state, AsOf::now(state, at), memory);
  taps.tap = 1e9;
  for (int i = 0; i < 12; ++i) {
    at += std::chrono::seconds{20};
    Happening what = event::Rest{row};
    if (i % 2 == 0) what = event::Run{row, vibrations_per_minute(6000)};
    const Event tap{EventId{fmt::format("tap{}", i)}, at, PersonId{"f"}, what, {}, std::nullopt};
    const double took = timed(1, [&] {
      extend(state, tap);
      (void)check(state, AsOf::now(state, at), memory);
    });
    if (i % 2 == 1) taps.tap = std::min(taps.tap, took);
  }
  return taps;
}

void bench_growth() {
  fmt::print("{:>8}  {:>6}  {:>10}  {:>10}  {:>18}  {:>10}\n", "events", "walls", "fold ms",
             "check ms", "after one tap ms", "findings");
  for (const std::size_t count : {1000U, 5000U, 10000U, 100000U}) {
    const LongPour pour(count);
    const Taps taps = measure(pour.events);
    fmt::print("{:>8}  {:>6}  {:>10.2f}  {:>10.2f}  {:>18.3f}  {:>10}\n", pour.events.size(),
               std::max<std::size_t>(1, (count + 2500) / 5000), taps.fold * 1e3, taps.check * 1e3,
               taps.tap * 1e3, taps.findings);
    std::fflush(stdout);
    if (count == 5000U) {
      say("one_tap_recheck_of_5000_events_vs_1_ms", 1e-3 / taps.tap, 1);
      say("one_tap_recheck_of_5000_events_vs_full_check", taps.check / taps.tap, 1);
    }
  }
}

}  // namespace

int main() {
  bench_field();
  bench_growth();
  return 0;
}
