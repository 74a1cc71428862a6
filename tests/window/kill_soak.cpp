// The real window killed in the middle of real clicks, again and again: every tap it called kept is
// in the book afterwards. Needs a display with the test extension and no window manager:
//   kill_soak.sh RISEBOOK
#include <X11/Xlib.h>
#include <X11/extensions/XTest.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include "pour/log/script.h"
#include "store/book/logbook.h"
#include "store/file/entry_now.h"

namespace fs = std::filesystem;
using namespace rb;
using Steady = std::chrono::steady_clock;

namespace {

constexpr unsigned kSeed = 20260302;
constexpr int kRoundsABook = 40;
// RUN of the two rows on a screen of 1280 by 800.
constexpr int kAcross = 1181;
constexpr int kDown[] = {704, 536};

[[noreturn]] void die(const std::string& why) {
  fmt::print(stderr, "FAILED: {}\n", why);
  std::exit(1);
}

template <class T>
T got(Result<T>&& result) {
  if (!result) die(to_text(result.error()));
  return std::move(*result);
}

void pause(double ms) {
  std::this_thread::sleep_for(std::chrono::duration<double, std::milli>(ms));
}

// The demo pour up to the start of its first lift: its first rows hang, nothing has run.
Script opening(const fs::path& source) {
  std::ifstream file(source / "assets/demo-pour.jsonl");
  std::string text;
  for (std::string line; std::getline(file, line);) {
    text += line + "\n";
    if (line.find("\"lift-start\"") != std::string::npos) break;
  }
  return got(read_script(text, "the demo pour"));
}

class Glass {
 public:
  Glass() : display_(XOpenDisplay(nullptr)) {
    if (display_ == nullptr) die("there is no display");
  }
  ~Glass() { XCloseDisplay(display_); }
  Glass(const Glass&) = delete;
  Glass& operator=(const Glass&) = delete;

  // Whether a window of the program is up, moved into the corner.
  bool window_up() {
    Window root = 0;
    Window parent = 0;
    Window* children = nullptr;
    unsigned count = 0;
    bool up = false;
    XQueryTree(display_, DefaultRootWindow(display_), &root, &parent, &children, &count);
    for (unsigned i = 0; i < count; ++i) {
      XWindowAttributes found{};
      if (XGetWindowAttributes(display_, children[i], &found) == 0) continue;
      if (found.map_state != IsViewable || found.width < 640) continue;
      if (found.x != 0 || found.y != 0) XMoveWindow(display_, children[i], 0, 0);
      up = true;
    }
    if (children != nullptr) XFree(children);
    XSync(display_, False);
    return up;
  }
  void click(int x, int y) {
    XTestFakeMotionEvent(display_, -1, x, y, CurrentTime);
    XTestFakeButtonEvent(display_, 1, True, CurrentTime);
    XFlush(display_);
    pause(25);
    XTestFakeButtonEvent(display_, 1, False, CurrentTime);
    XFlush(display_);
  }

 private:
  Display* display_;
};

// A window of the program goes away between two questions: no reason to end.
int ignore(Display*, XErrorEvent*) {
  return 0;
}

pid_t start(const std::string& program, const fs::path& book, const fs::path& told) {
  const pid_t child = fork();
  if (child != 0) return child;
  const int none = open("/dev/null", O_WRONLY);
  dup2(none, 2);
  execl(program.c_str(), program.c_str(), book.c_str(), "--width", "1280", "--height", "800",
        "--tell-kept", told.c_str(), nullptr);
  _exit(127);
}

std::vector<std::int64_t> told_in(const fs::path& path) {
  std::ifstream file(path);
  std::vector<std::int64_t> all;
  std::string word;
  for (std::int64_t seq = 0; file >> word >> seq;) all.push_back(seq);
  return all;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  const char* asked = std::getenv("RISEBOOK_ROUNDS");
  const int rounds = asked != nullptr ? std::atoi(asked) : 3;
  std::string name = (fs::temp_directory_path() / "kills-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) die("no folder");
  const fs::path folder = name;
  setenv("XDG_CONFIG_HOME", (folder / "config").c_str(), 1);
  setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
  const Script script = opening(argv[2]);
  std::mt19937 random(kSeed);
  XSetErrorHandler(ignore);
  Glass glass;
  std::size_t kept = 0;
  std::size_t clicks = 0;
  std::vector<double> starts;
  fs::path book;
  for (int round = 0; round < rounds; ++round) {
    if (round % kRoundsABook == 0) {
      book = folder / fmt::format("{}.risebook", round);
      auto made = got(Logbook::create(book));
      got(made.append_script(script, script_entry(entry_now())));
    }
    const fs::path told = folder / "told";
    fs::remove(told);
    const auto before = got(got(Logbook::open(book, Access::read)).head()).seq;
    const auto began = Steady::now();
    const auto since = [&] { return std::chrono::duration<double>(Steady::now() - began).count(); };
    const pid_t child = start(argv[1], book, told);
    while (!glass.window_up()) {
      if (since() > 60 || waitpid(child, nullptr, WNOHANG) != 0) die("no window came up");
      pause(5);
    }
    // Clicks until one is kept, then for a random while more, and the axe falls at any moment.
    std::size_t row = 0;
    while (told_in(told).empty()) {
      if (since() > 60) die("no click was kept");
      glass.click(kAcross, kDown[row++ % 2]);
      ++clicks;
      pause(40);
    }
    starts.push_back(since());
    const double more = std::uniform_real_distribution(0.0, 400.0)(random);
    std::thread axe([&] {
      pause(more);
      kill(child, SIGKILL);
    });
    const auto until = Steady::now() + std::chrono::duration<double, std::milli>(more);
    while (Steady::now() < until) {
      glass.click(kAcross, kDown[row++ % 2]);
      ++clicks;
      pause(std::uniform_real_distribution(5.0, 40.0)(random));
    }
    axe.join();
    waitpid(child, nullptr, 0);
    const auto seqs = told_in(told);
    kept += seqs.size();
    const auto left = got(Logbook::open(book, Access::read));
    const auto head = got(left.head());
    if (head.seq < seqs.back()) {
      die(fmt::format("round {}: event {} was called kept, the book ends at {}", round, seqs.back(),
                      head.seq));
    }
    for (std::int64_t seq = before + 1; seq <= head.seq; ++seq) {
      const Event event = got(left.event(seq));
      if (!std::holds_alternative<event::Run>(event.what) &&
          !std::holds_alternative<event::Rest>(event.what)) {
        die(fmt::format("round {}: event {} is none that was tapped: {}", round, seq,
                        kind_text(event.what)));
      }
    }
    if (round % 20 == 19 || round + 1 == rounds) {
      const auto report = got(left.verify());
      if (!report.sound()) die(report.faults.front());
      std::vector<double> sorted = starts;
      std::sort(sorted.begin(), sorted.end());
      fmt::print(
          "{} kills, seed {}: {} clicks, {} told kept, 0 lost; start to first kept: "
          "median {:.2f} s\n",
          round + 1, kSeed, clicks, kept, sorted[sorted.size() / 2]);
      std::fflush(stdout);
    }
  }
  fs::remove_all(folder);
  fmt::print("soak window-kills done={} failed=0\n", rounds);
  return 0;
}
