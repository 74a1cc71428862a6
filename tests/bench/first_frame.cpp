// The first frame that shows the pour under way: a book of 10,000 pours against a book of one, and
// the window with a pour against an empty window.
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "app/session.h"
#include "bench/bench.h"
#include "bench/pours.h"
#include "screens/book/ui.h"
#include "store/file/entry_now.h"
#include "tablet/window.h"

using namespace rb;

namespace {

constexpr std::size_t kMany = 10'000;
constexpr int kRuns = 5;
constexpr std::chrono::minutes kUtc{0};

class Folder {
 public:
  Folder() {
    path = std::filesystem::temp_directory_path() /
           fmt::format("risebook-first-{}", static_cast<long>(getpid()));
    std::filesystem::create_directories(path);
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::filesystem::path path;
};

// So many pours with the demo's plan, the last of them open, the others closed.
void fill(Logbook& book, const std::vector<Event>& demo, std::size_t count) {
  const auto& plan = std::get<event::PourOpen>(demo.front().what).plan;
  std::vector<Tapped> taps;
  for (std::size_t i = 0; i < count; ++i) {
    const PourId id{fmt::format("P{:05}", i)};
    const Moment at = after(demo.front().at, seconds(600.0 * static_cast<double>(i)));
    const Entry entry{at, at.time_since_epoch(), "boot"};
    Event event{{}, at, PersonId{"f"}, event::PourOpen{id, plan}, {}, {}};
    taps.push_back({id, event, entry, at});
    event.what = event::PourClose{};
    if (i + 1 < count) taps.push_back({id, event, entry, at});
    if (taps.size() > 500 || i + 1 == count) {
      if (const auto kept = book.append_all(taps); !kept) {
        throw bench::Trouble(to_text(kept.error()));
      }
      taps.clear();
    }
  }
}

std::filesystem::path made(const Folder& folder, std::size_t count) {
  const auto path = folder.path / fmt::format("{}.risebook", count);
  auto book = Logbook::create(path);
  if (!book) throw bench::Trouble(to_text(book.error()));
  fill(*book, bench::demo_pour(), count);
  return path;
}

// From nothing to the pour on the screen, in seconds of the processor, all threads.
double without_window(const std::filesystem::path& book) {
  const double from = bench::cpu_seconds();
  auto session = Session::open(book, entry_now, kUtc);
  if (!session || !(*session)->settle(Seconds{120})) throw bench::Trouble("the book did not open");
  if ((*session)->pour() == nullptr) throw bench::Trouble("no pour came up");
  screens::Ui ui;
  (void)ui.frame({.width_px = 1280, .height_px = 800}, (*session)->look());
  return bench::cpu_seconds() - from;
}

double many_to_one() {
  const Folder folder;
  const auto one = made(folder, 1);
  const auto many = made(folder, kMany);
  double least_one = 1e9;
  double least_many = 1e9;
  for (int i = 0; i < kRuns; ++i) {
    least_one = std::min(least_one, without_window(one));
    least_many = std::min(least_many, without_window(many));
  }
  fmt::print("first frame: {:.1f} ms with one pour, {:.1f} ms with {}\n", least_one * 1e3,
             least_many * 1e3, kMany);
  return least_many / least_one;
}

// Until a window has drawn what it has to show.
double in_window(const std::filesystem::path* book) {
  const double from = bench::cpu_seconds();
  std::unique_ptr<Session> session;
  if (book != nullptr) {
    auto opened = Session::open(*book, entry_now, kUtc, {.wake = app::wake_window});
    if (!opened) throw bench::Trouble("the book did not open");
    session = std::move(*opened);
  }
  screens::Ui ui;
  std::atomic<bool> stop{false};
  app::Program program;
  double until = 0;
  int shown = 0;
  program.look = [&](Moment now) {
    if (shown > 0) {  // the frame before this one was the first to show it
      if (until == 0) until = bench::cpu_seconds();
      stop = true;
    }
    screens::World world = session ? session->look() : screens::World{.now = now};
    if (!session || world.state != nullptr) ++shown;
    return world;
  };
  program.act = [](const screens::Intents&) { return true; };
  program.stop = &stop;
  if (const auto done = app::show({}, ui, program); !done) {
    throw bench::Trouble(to_text(done.error()));
  }
  return until - from;
}

double pour_to_empty() {
  const Folder folder;
  const auto book = made(folder, 1);
  double least_pour = 1e9;
  double least_empty = 1e9;
  for (int i = 0; i < kRuns; ++i) {
    least_pour = std::min(least_pour, in_window(&book));
    least_empty = std::min(least_empty, in_window(nullptr));
  }
  fmt::print("first frame in a window: {:.0f} ms with a pour, {:.0f} ms empty\n", least_pour * 1e3,
             least_empty * 1e3);
  return least_pour / least_empty;
}

const bench::Bench many{"first-frame-10000-pours-to-1", 1.2, many_to_one};
const bench::Bench window{"first-frame-pour-to-empty-window", 1.5, pour_to_empty,
                          bench::Needs::display};

}  // namespace
