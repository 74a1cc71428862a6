// Random taps on rows in a real window while the program stands still again and again: every press
// is kept on its row, in order, within 50 ms of when it was made, or refused aloud; none silently.
// Usage: window_presses RISEBOOK SOURCE_DIR [TAPS [SEED [DISK_SHIM]]]
// With a DISK_SHIM (tests/fault/whole) the book lies on a disk that takes 50 ms to 3 s a sync.
#include <X11/keysym.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/ptrace.h>
#include <sys/wait.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <random>
#include <thread>

#include "rig.h"

using namespace rb::rig;

namespace {

constexpr double kTimeOffMs = 50;
constexpr int kSameRowMs = 400;  // sooner on one row is an echo, and refused aloud

struct Counts {
  int stops = 0, held_loops = 0;
  double stood = 0;
};

// Stops the whole program, or its drawing thread alone, for 0.3 to 5 s, again and again.
class Staller {
 public:
  Staller(pid_t pid, unsigned seed, std::filesystem::path disk)
      : pid_(pid), random_(seed), disk_(std::move(disk)) {
    thread_ = std::thread([this] { run(); });
  }
  Counts done() {
    leave_ = true;
    thread_.join();
    return counts_;
  }

 private:
  void sleep(double seconds) {
    std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
  }
  // The first thread of the program is the one that draws.
  bool hold_loop(double seconds) {
    if (ptrace(PTRACE_SEIZE, pid_, nullptr, nullptr) != 0) return false;
    bool held = ptrace(PTRACE_INTERRUPT, pid_, nullptr, nullptr) == 0;
    if (held) held = waitpid(pid_, nullptr, __WALL) == pid_;
    if (held) sleep(seconds);
    ptrace(PTRACE_DETACH, pid_, nullptr, nullptr);
    return held;
  }
  void run() {
    std::uniform_real_distribution<double> stand(0.3, 5);
    std::uniform_real_distribution<double> go(0.3, 2);
    std::uniform_int_distribution<int> sync_ms(50, 3000);
    while (!leave_) {
      if (!disk_.empty()) std::ofstream(disk_) << "sync-ms " << sync_ms(random_) << '\n';
      const double seconds = stand(random_);
      if (counts_.held_loops <= counts_.stops && hold_loop(seconds)) {
        ++counts_.held_loops;
      } else {
        kill(pid_, SIGSTOP);
        sleep(seconds);
        kill(pid_, SIGCONT);
        ++counts_.stops;
      }
      counts_.stood += seconds;
      sleep(go(random_));
    }
  }
  pid_t pid_;
  std::mt19937 random_;
  std::filesystem::path disk_;  ///< says how slow the disk is; empty: it is well
  Counts counts_;
  std::atomic<bool> leave_{false};
  std::thread thread_;
};

// How far a moment lies outside the call that made the press.
double off_ms(Clock::time_point a, const Made& made) {
  const double off = std::abs(std::chrono::duration<double, std::milli>(a - made.when).count());
  return std::max(0.0, off - made.give_ms);
}

struct Press {
  Made made;
  std::string row;
};

std::vector<Press> tap_rows(Rig& rig, int taps, std::mt19937& random) {
  std::vector<Press> all;
  std::array<Clock::time_point, 4> last{};
  std::uniform_int_distribution<int> dx(-60, 60);
  std::uniform_int_distribution<int> dy(-50, 50);
  std::uniform_int_distribution<int> held(30, 80);
  std::uniform_int_distribution<int> pause(60, 250);
  while (static_cast<int>(all.size()) < taps) {
    const std::size_t row = random() % 4;
    if (Clock::now() - last[row] < Millis{kSameRowMs}) {
      std::this_thread::sleep_for(Millis{20});
      continue;
    }
    const Place at{kRows[row].x + dx(random), kRows[row].y + dy(random)};
    const Made made = rig.press(at, Millis{held(random)});
    last[row] = made.when;
    all.push_back({made, fmt::format("R{}", row + 1)});
    std::this_thread::sleep_for(Millis{pause(random)});
  }
  return all;
}

// Keys reach the window though the input window lies over it: Escape closes a panel.
void check_keys(Rig& rig) {
  const std::size_t before = rig.taken().size();
  rig.press(kHold, Millis{50});
  require(rig.wait_taken(before + 1, Millis{5000}), "HOLD taken");
  std::this_thread::sleep_for(Millis{700});
  rig.key(XK_Escape);
  std::this_thread::sleep_for(Millis{700});
  rig.press(kHold, Millis{50});
  require(rig.wait_taken(before + 2, Millis{5000}), "a second press taken");
  const auto taken = rig.taken();
  require(taken[before].on == "hold" && taken[before + 1].on == "hold",
          fmt::format("Escape closes the panel: pressed were {} and {}", taken[before].on,
                      taken[before + 1].on));
  std::this_thread::sleep_for(Millis{700});
  rig.key(XK_Escape);
  std::this_thread::sleep_for(Millis{700});
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  const int taps = argc > 3 ? std::atoi(argv[3]) : 30;
  const unsigned seed = argc > 4 ? static_cast<unsigned>(std::atoi(argv[4])) : 20260302;
  std::mt19937 random(seed);
  auto* rig = new Rig(argv[1], argv[2]);
  std::map<std::string, std::string> environment;
  std::filesystem::path disk;
  if (argc > 5) {
    disk = rig->folder() / "disk";
    environment = {{"LD_PRELOAD", argv[5]},
                   {"RISEBOOK_DISK", rig->folder().string()},
                   {"RISEBOOK_DISK_SAYS", disk.string()}};
  }
  rig->start(environment);
  check_keys(*rig);
  const std::size_t before = rig->taken().size();

  Staller staller(rig->pid(), seed + 1, disk);
  const std::vector<Press> made = tap_rows(*rig, taps, random);
  const Counts stalls = staller.done();
  rig->wait_taken(before + made.size(), Millis{60000});
  std::this_thread::sleep_for(Millis{2000});
  const auto all = rig->taken();
  require(rig->stop(), "the program leaves when asked");
  const auto kept = rig->kept();

  int booked = 0;
  int refused = 0;
  int silent = 0;
  int beyond = 0;  // told of, and not made
  int wrong = 0;
  double worst = 0;
  std::size_t next_taken = before;
  std::size_t next_kept = 0;
  for (const Press& press : made) {
    const auto is_it = [&](const Taken& told) {
      return off_ms(told.when, press.made) <= kTimeOffMs &&
             std::abs(told.x - press.made.at.x) < 1 && std::abs(told.y - press.made.at.y) < 1;
    };
    // One that is told with another time or place does not make those after it silent.
    const auto from = all.begin() + static_cast<std::ptrdiff_t>(next_taken);
    const auto told = std::find_if(from, all.end(), is_it);
    if (told == all.end()) {
      ++silent;
      fmt::print(
          "silent: {} at {},{}; told next: {}\n", press.row, press.made.at.x, press.made.at.y,
          from == all.end() ? std::string{"nothing"}
                            : fmt::format("{} at {},{}, {:.0f} ms off, {}", from->on, from->x,
                                          from->y, off_ms(from->when, press.made), from->end));
      continue;
    }
    beyond += static_cast<int>(told - from);
    next_taken += static_cast<std::size_t>(told - from);
    const Taken& taken = all[next_taken++];
    if (taken.end != "taken") {
      ++refused;
      fmt::print("refused aloud: {} ({})\n", press.row, taken.end);
      continue;
    }
    if (next_kept >= kept.size()) {
      ++silent;
      fmt::print("taken and not kept: {}\n", press.row);
      continue;
    }
    const Kept& event = kept[next_kept++];
    const double off = off_ms(event.at, press.made);
    worst = std::max(worst, off);
    if (event.row != press.row || off > kTimeOffMs) {
      ++wrong;
      fmt::print("wrong: {} pressed, {} {} kept, {:.0f} ms off\n", press.row, event.kind, event.row,
                 off);
    } else {
      ++booked;
    }
  }
  fmt::print(
      "seed {}: {} taps; stood still {} times ({} the whole program, {} its drawing alone), {:.1f} "
      "s "
      "in all; {} kept on their row in order, {} refused aloud, {} wrong, {} silent; {} kept "
      "beyond; "
      "time off by {:.1f} ms at most\n",
      seed, made.size(), stalls.stops + stalls.held_loops, stalls.stops, stalls.held_loops,
      stalls.stood, booked, refused, wrong, silent, kept.size() - next_kept, worst);
  require(wrong == 0 && silent == 0 && beyond == 0 && next_kept == kept.size(),
          "every press on its row or refused aloud, and nothing else kept");
  delete rig;
  return 0;
}
