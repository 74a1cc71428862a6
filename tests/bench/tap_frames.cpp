// How long frames take to build while 500 taps are logged through the program and a book on the
// disk.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "app/session.h"
#include "bench/bench.h"
#include "bench/pours.h"
#include "pour/log/script.h"

using namespace rb;
using namespace rb::screens;

namespace {

using Clock = std::chrono::steady_clock;

// 500 taps on the rows' buttons and the notes, through the program and a book on the disk.
double longest_frame() {
  const std::vector<Event> events = bench::demo_pour();
  const auto folder = std::filesystem::temp_directory_path() /
                      fmt::format("risebook-bench-{}", static_cast<long>(getpid()));
  std::filesystem::create_directories(folder);
  Moment now = *parse_moment("2026-03-02T05:45:00.000Z");
  const auto clock = [&] { return Entry{now, now.time_since_epoch(), "boot"}; };
  {
    Script script{PourId{}, {}};
    const auto first = bench::until(events, "2026-03-02T05:40:00.000Z");
    script.events = first;
    script.pour = std::get<event::PourOpen>(first.front().what).pour;
    auto book = Logbook::open_or_create(folder / "a.risebook");
    if (!book || !book->append_script(script, script_entry(clock())))
      throw bench::Trouble("the book could not be made");
  }
  auto session = Session::open(folder / "a.risebook", clock, std::chrono::minutes{0});
  if (!session || !(*session)->settle()) throw bench::Trouble("the book could not be made");
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
    if (found == targets.end()) throw bench::Trouble("the row's button is not on the screen");
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
  session->reset();
  std::filesystem::remove_all(folder);
  return built.back() / 16.6;
}

const bench::Bench longest{"frame-build-longest-of-16.6-ms", 1, longest_frame};

}  // namespace
