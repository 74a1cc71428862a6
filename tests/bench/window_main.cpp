// What the screens cost: the window at rest, with timers, and drawn without end in the same run;
// then how long frames take to build while 500 taps are logged. Needs a display:
//   xvfb-run -a -s "-screen 0 1280x800x24 -noreset" risebook_bench_window SCRIPT
// One line a measure: `bench NAME ratio=X goal=Y`. A core's share is CPU time over wall time.
#include <fmt/format.h>
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include "app/session.h"
#include "app/window.h"
#include "check/check.h"
#include "pour/fold.h"
#include "pour/script.h"

using namespace rb;
using namespace rb::screens;

namespace {

using Clock = std::chrono::steady_clock;
constexpr double kSpan = 10;  // seconds a measure takes

double cpu_seconds() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  const auto seconds_of = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) * 1e-6;
  };
  return seconds_of(used.ru_utime) + seconds_of(used.ru_stime);
}

struct Cost {
  double share = 0;  ///< of a core
  long frames = 0;
};

std::vector<Event> events_until(const std::vector<Event>& all, const char* until) {
  std::vector<Event> events = all;
  const Moment end = *parse_moment(until);
  std::erase_if(events, [&](const Event& e) { return e.at > end; });
  return events;
}

// The window over a pour as it stood at a moment, its clock running on from there.
Cost window_cost(const std::vector<Event>& events, Moment from, bool always) {
  const auto state = fold(events);
  std::optional<CheckReport> report;
  Moment checked{};
  const auto began = Clock::now();
  Ui ui;
  std::atomic<bool> stop{false};
  app::Program program;
  program.look = [&](Moment) {
    const Moment now = after(from, Seconds{Clock::now() - began});
    if (!report || between(checked, now) >= Seconds{5}) {  // as the session does
      report = check(*state, AsOf::now(*state, now));
      checked = now;
    }
    World world{.now = now};
    world.state = &*state;
    world.report = &*report;
    return world;
  };
  program.act = [](const Intents&) { return true; };
  program.stop = &stop;
  double cpu = 0;
  std::thread watch([&] {
    std::this_thread::sleep_for(std::chrono::seconds(5));  // the window comes up
    const double before = cpu_seconds();
    std::this_thread::sleep_for(Seconds{kSpan});
    cpu = cpu_seconds() - before;
    stop = true;
  });
  app::WindowSpec spec;
  spec.always_redraw = always;
  const auto shown = app::show(spec, ui, program);
  watch.join();
  if (!shown) {
    fmt::print(stderr, "{}\n", to_text(shown.error()));
    std::exit(2);
  }
  return {cpu / kSpan, shown->frames};
}

void say(const char* name, double ratio, double goal) {
  fmt::print("bench {} ratio={:.4f} goal={:g}\n", name, ratio, goal);
}

void bench_window(const std::vector<Event>& events) {
  const auto rest = events_until(events, "2026-03-02T05:09:00.000Z");
  const auto timers = events_until(events, "2026-03-02T06:16:10.000Z");
  const Cost endless = window_cost(timers, *parse_moment("2026-03-02T06:16:10.000Z"), true);
  const Cost at_rest = window_cost(rest, *parse_moment("2026-03-02T05:09:05.000Z"), false);
  const Cost ticking = window_cost(timers, *parse_moment("2026-03-02T06:16:10.000Z"), false);
  fmt::print(
      "drawn without end: {:.1f} % of a core, {} frames; at rest {:.2f} %, {} frames; "
      "timers {:.2f} %, {} frames\n",
      endless.share * 100, endless.frames, at_rest.share * 100, at_rest.frames, ticking.share * 100,
      ticking.frames);
  say("window-rest-of-a-core", at_rest.share, 0.01);
  say("window-timers-of-a-core", ticking.share, 0.04);
  say("window-rest-to-endless", at_rest.share / endless.share, 0.01);
  say("window-timers-to-endless", ticking.share / endless.share, 0.04);
}

// 500 taps on the rows' buttons and the notes, through the program and a book on the disk.
void bench_taps(const std::vector<Event>& events) {
  const auto folder = std::filesystem::temp_directory_path() /
                      fmt::format("risebook-bench-{}", static_cast<long>(getpid()));
  std::filesystem::create_directories(folder);
  Moment now = *parse_moment("2026-03-02T05:45:00.000Z");
  const auto clock = [&] { return Entry{now, now.time_since_epoch(), "boot"}; };
  {
    Script script{PourId{}, {}};
    const auto first = events_until(events, "2026-03-02T05:40:00.000Z");
    script.events = first;
    script.pour = std::get<event::PourOpen>(first.front().what).pour;
    auto book = Logbook::open_or_create(folder / "a.risebook");
    if (!book || !book->append_script(script, script_entry(clock()))) std::exit(3);
  }
  auto session = Session::open(folder / "a.risebook", clock, std::chrono::minutes{0});
  if (!session) std::exit(3);
  Ui ui;
  std::vector<double> built;
  double longest_keep = 0;
  const auto frame = [&](std::optional<Touch> touch) {
    const auto began = Clock::now();
    UiInput input{.width_px = 1280, .height_px = 800, .touch = touch};
    const UiOutput out = ui.frame(input, (*session)->look());
    built.push_back(std::chrono::duration<double, std::milli>(Clock::now() - began).count());
    const auto kept = Clock::now();
    (*session)->act(out.intents);
    longest_keep = std::max(longest_keep,
                            std::chrono::duration<double, std::milli>(Clock::now() - kept).count());
  };
  for (int i = 0; i < 3; ++i) frame({});
  built.clear();
  const std::size_t before = (*session)->pour()->log.size();
  for (int tap = 0; tap < 500; ++tap) {
    const char* id = tap % 4 < 2 ? "row R1 near" : "row R2 near";
    const auto& targets = ui.probe().targets;
    const auto found = std::find_if(targets.begin(), targets.end(),
                                    [&](const SeenTarget& t) { return t.target.id == id; });
    if (found == targets.end()) std::exit(4);
    const Point at = found->target.box.middle();
    frame(Touch{Touch::Kind::down, at, now, now.time_since_epoch()});
    now += std::chrono::milliseconds(60);
    frame(Touch{Touch::Kind::up, at, now, now.time_since_epoch()});
    for (int i = 0; i < 2; ++i) frame({});
    now += std::chrono::milliseconds(1940);
  }
  const std::size_t kept = (*session)->pour()->log.size() - before;
  std::sort(built.begin(), built.end());
  const auto over = static_cast<long>(
      std::count_if(built.begin(), built.end(), [](double ms) { return ms > 16.6; }));
  fmt::print(
      "500 taps: {} events kept, {} frames, median {:.2f} ms, p99 {:.2f} ms, longest "
      "{:.2f} ms to build; {} over 16.6 ms; longest keep {:.2f} ms\n",
      kept, built.size(), built[built.size() / 2], built[built.size() * 99 / 100], built.back(),
      over, longest_keep);
  say("frame-build-longest-of-16.6-ms", built.back() / 16.6, 1);
  session->reset();
  std::filesystem::remove_all(folder);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  std::ifstream file(argv[1]);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  auto script = read_script(text, argv[1]);
  if (!script) return 2;
  std::vector<Event> events = script->events;
  bench_taps(events);
  for (std::size_t i = 0; i < events.size(); ++i) {
    if (events[i].id.empty()) events[i].id = EventId{std::to_string(i + 1)};
    events[i].entry = Entry{events[i].at, events[i].at.time_since_epoch(), "demo"};
  }
  bench_window(events);
  return 0;
}
