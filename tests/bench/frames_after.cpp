// How many frames a window draws after a finger leaves the glass, and after the disk has answered.
#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <thread>

#include "bench/bench.h"
#include "bench/pours.h"
#include "check/check.h"
#include "pour/log/fold.h"
#include "tablet/window.h"

using namespace rb;
using namespace rb::screens;

namespace {

constexpr double kMost = 3;
constexpr auto kQuiet = std::chrono::milliseconds(600);

void finger(const char* what) {
  if (std::system(fmt::format("xdotool {}", what).c_str()) != 0) {
    throw bench::Trouble("xdotool is missing");
  }
}

// The demo pour before its first lift: nothing runs, so that nothing is drawn by itself.
double frames_after() {
  const Moment at = *parse_moment("2026-03-02T05:09:05.000Z");
  const auto state = fold(bench::until(bench::demo_pour(), "2026-03-02T05:09:00.000Z"));
  const auto report = check(*state, AsOf::now(*state, at));
  Ui ui;
  std::atomic<bool> stop{false};
  std::atomic<long> frames{0};
  std::atomic<long> kept{0};
  app::Program program;
  program.look = [&](Moment) {
    ++frames;
    World world{.now = at};
    world.state = &*state;
    world.report = &report;
    return world;
  };
  program.act = [&](const Intents& intents) {
    for (const Intent& intent : intents) kept += std::holds_alternative<KeepEvent>(intent) ? 1 : 0;
    return true;
  };
  program.stop = &stop;
  long after_release = 0;
  long after_answer = 0;
  std::string failed;
  std::thread hand([&] {
    try {
      std::this_thread::sleep_for(std::chrono::seconds(4));  // the window comes up
      finger("search --name Risebook windowmove 0 0");
      finger("mousemove 223 602 mousedown 1");  // START LIFT 1
      std::this_thread::sleep_for(kQuiet);
      const long before = frames;
      finger("mouseup 1");
      std::this_thread::sleep_for(kQuiet);
      after_release = frames - before;
      const long answered = frames;
      app::wake_window();
      std::this_thread::sleep_for(kQuiet);
      after_answer = frames - answered;
    } catch (const bench::Trouble& trouble) {
      failed = trouble.what();
    }
    stop = true;
  });
  const auto shown = app::show({}, ui, program);
  hand.join();
  if (!shown) throw bench::Trouble(to_text(shown.error()));
  if (!failed.empty()) throw bench::Trouble(failed);
  if (kept != 1) throw bench::Trouble("the tap was not taken");
  fmt::print("frames: {} after the release, {} after the disk's answer\n", after_release,
             after_answer);
  return static_cast<double>(std::max(after_release, after_answer)) / kMost;
}

const bench::Bench frames{"frames-after-a-tap-of-3", 1, frames_after, bench::Needs::display};

}  // namespace
