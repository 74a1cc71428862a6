// A real window on a disk that takes 300 ms a sync, tapped a hundred times: how long the loop was
// away from polling, drawing left out. Wall time: on a machine with much else to do it tells of
// that as well.
#include <fmt/format.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <thread>

#include "../fault/fault_vfs.h"
#include "app/session.h"
#include "bench/bench.h"
#include "bench/pours.h"
#include "store/file/entry_now.h"
#include "tablet/window.h"

using namespace rb;

namespace {

constexpr int kTaps = 100;
constexpr double kGoalMs = 50;

// RUN and REST of two rows by turns, far enough apart not to be taken for echoes.
void taps() {
  for (int i = 0; i < kTaps; ++i) {
    const auto tap =
        fmt::format("xdotool mousemove 1181 {} mousedown 1 sleep 0.03 mouseup 1 sleep 0.06",
                    i % 2 == 0 ? 704 : 536);
    if (std::system(tap.c_str()) != 0) throw bench::Trouble("xdotool is missing");
  }
}

double gap() {
  const auto folder = std::filesystem::temp_directory_path() /
                      fmt::format("risebook-slow-{}", static_cast<long>(getpid()));
  std::filesystem::create_directories(folder);
  faults::FaultyDisk disk;
  const auto path = folder / "a.risebook";
  {
    Script script{PourId{}, bench::until(bench::demo_pour(), "2026-03-02T05:10:00.000Z")};
    script.pour = std::get<event::PourOpen>(script.events.front().what).pour;
    auto book = Logbook::create(path);
    if (!book || !book->append_script(script, script_entry(entry_now()))) {
      throw bench::Trouble("the book could not be made");
    }
  }
  auto session = Session::open(path, entry_now, std::chrono::minutes{0},
                               {.on_kept = {}, .wake = app::wake_window});
  if (!session || !(*session)->settle() || (*session)->pour() == nullptr) {
    throw bench::Trouble("the book did not open");
  }
  const std::size_t before = (*session)->pour()->log.size();
  disk.slow(std::chrono::milliseconds(300));
  screens::Ui ui;
  std::atomic<bool> stop{false};
  app::Program program;
  program.look = [&](Moment) { return (*session)->look(); };
  program.act = [&](const screens::Intents& intents) { return (*session)->act(intents); };
  program.stop = &stop;
  std::string failed;
  std::thread hand([&] {
    try {
      std::this_thread::sleep_for(std::chrono::seconds(4));  // the window comes up
      if (std::system("xdotool search --name Risebook windowmove 0 0") != 0) {
        throw bench::Trouble("no window came up");
      }
      taps();
    } catch (const bench::Trouble& trouble) {
      failed = trouble.what();
    }
    stop = true;
  });
  const auto shown = app::show({}, ui, program);
  hand.join();
  const std::size_t taken = (*session)->pour()->log.size() - before;
  const bool kept = (*session)->settle(Seconds{60});
  disk.slow(std::chrono::milliseconds(0));
  session->reset();
  std::error_code ignored;
  std::filesystem::remove_all(folder, ignored);
  if (!shown) throw bench::Trouble(to_text(shown.error()));
  if (!failed.empty()) throw bench::Trouble(failed);
  fmt::print(
      "{} taps on a disk of 300 ms a sync: {} taken, {}; longest away from polling {:.1f} ms\n",
      kTaps, taken, kept ? "all kept" : "NOT ALL KEPT", shown->gap_max_ms);
  if (!kept || taken < kTaps / 2) throw bench::Trouble("taps were lost");
  return shown->gap_max_ms / kGoalMs;
}

const bench::Bench slow{"slow-disk-gap-of-50-ms", 1, gap, bench::Needs::display};

}  // namespace
