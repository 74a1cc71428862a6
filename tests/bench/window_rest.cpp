// What the window costs at rest and with timers, against drawing without end in the same run. A
// core's share is CPU time over wall time.
#include <fmt/format.h>

#include <atomic>
#include <chrono>
#include <map>
#include <thread>

#include "bench/bench.h"
#include "bench/pours.h"
#include "check/check.h"
#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "tablet/window.h"

using namespace rb;
using namespace rb::screens;

namespace {

using Clock = std::chrono::steady_clock;
constexpr double kSpan = 10;  // seconds a measure takes
constexpr int kSpans = 2;     // the least of them counts

struct Cost {
  double share = 0;    ///< of a core
  double a_frame = 0;  ///< seconds of a core
  long frames = 0;
};

// The window over a pour as it stood at a moment, its clock running on from there.
Cost window_cost(const std::vector<Event>& events, Moment from, bool always) {
  const auto state = fold(events);
  std::optional<CheckReport> report;
  CheckMemory memory;
  Moment checked{};
  const auto began = Clock::now();
  Ui ui;
  std::atomic<bool> stop{false};
  app::Program program;
  std::atomic<int> drawn{0};
  program.look = [&](Moment) {
    ++drawn;
    const Moment now = after(from, Seconds{Clock::now() - began});
    if (!report || between(checked, now) >= Seconds{5}) {  // as the session does
      report = check(*state, AsOf::now(*state, now), memory);
      checked = now;
    }
    World world{.now = now};
    world.state = &*state;
    world.report = &*report;
    return world;
  };
  program.act = [](const Intents&) { return true; };
  program.stop = &stop;
  Cost cost{1e9, 1e9, 0};
  std::thread watch([&] {
    std::this_thread::sleep_for(std::chrono::seconds(5));  // the window comes up
    for (int i = 0; i < kSpans; ++i) {
      const double before = bench::cpu_seconds();
      const int frames = drawn;
      std::this_thread::sleep_for(Seconds{kSpan});
      const double cpu = bench::cpu_seconds() - before;
      cost.share = std::min(cost.share, cpu / kSpan);
      cost.a_frame = std::min(cost.a_frame, cpu / std::max(1, drawn - frames));
    }
    stop = true;
  });
  app::WindowSpec spec;
  spec.always_redraw = always;
  const auto shown = app::show(spec, ui, program);
  watch.join();
  if (!shown) {
    throw bench::Trouble(to_text(shown.error()));
  }
  cost.frames = shown->frames;
  return cost;
}

enum class Case { endless, rest, timers, great_endless, great_timers };

Cost measured(Case which) {
  static std::map<Case, Cost> known;
  const auto [it, fresh] = known.try_emplace(which);
  if (!fresh) return it->second;
  const auto demo = bench::demo_pour();
  if (which == Case::rest) {
    it->second = window_cost(bench::until(demo, "2026-03-02T05:09:00.000Z"),
                             *parse_moment("2026-03-02T05:09:05.000Z"), false);
  } else if (which >= Case::great_endless) {
    // A wall of 960 motors, one of its rows running.
    std::vector<Event> great = bench::long_pour(5000);
    while (!std::holds_alternative<event::Run>(great.back().what)) great.pop_back();
    const Moment at = great.back().at + std::chrono::seconds{5};
    it->second = window_cost(great, at, which == Case::great_endless);
  } else {
    const Moment at = *parse_moment("2026-03-02T06:16:10.000Z");
    it->second =
        window_cost(bench::until(demo, "2026-03-02T06:16:10.000Z"), at, which == Case::endless);
  }
  constexpr const char* kNames[] = {"drawn without end", "at rest", "timers",
                                    "960 motors, drawn without end", "960 motors, timers"};
  fmt::print("{}: {:.2f} % of a core, {} frames\n", kNames[static_cast<int>(which)],
             it->second.share * 100, it->second.frames);
  return it->second;
}

const bench::Bench rest{"window-rest-of-a-core", 0.01, [] { return measured(Case::rest).share; },
                        bench::Needs::display};
const bench::Bench timers{"window-timers-of-a-core", 0.04,
                          [] { return measured(Case::timers).share; }, bench::Needs::display};
const bench::Bench rest_to_endless{
    "window-rest-to-endless", 0.01,
    [] { return measured(Case::rest).share / measured(Case::endless).share; },
    bench::Needs::display};
const bench::Bench great_wall{
    "window-timers-960-motors-to-ordinary", 1,
    [] {
      // Drawing without end takes all of the machine whatever is drawn, where no display holds it
      // to its own pace: of it the cost of a frame is the measure.
      const double great =
          measured(Case::great_timers).share / measured(Case::great_endless).a_frame;
      return great / (measured(Case::timers).share / measured(Case::endless).a_frame);
    },
    bench::Needs::display};
const bench::Bench timers_to_endless{
    "window-timers-to-endless", 0.04,
    [] { return measured(Case::timers).share / measured(Case::endless).share; },
    bench::Needs::display};

}  // namespace
