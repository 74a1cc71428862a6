// A program asked to end while taps wait for its disk: it waits as long as the disk goes on, says
// what it waits for, and tells of what could not be kept; closing its window asks first.
// Usage: window_leaving RISEBOOK SOURCE_DIR DISK_SHIM
#include <X11/Xlib.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>

#include <fstream>
#include <iterator>
#include <memory>
#include <thread>

#include "rig.h"

using namespace rb::rig;

namespace {

constexpr Millis kHeld{50};
constexpr Millis kMostLeaving{40'000};

/// The program with the demo pour, on a disk that is as `says` tells; its errors go to a file.
struct Program {
  Program(const char* program, const char* source, const char* shim)
      : rig(std::make_unique<Rig>(program, source)) {
    is("");
    rig->start({{"LD_PRELOAD", shim},
                // The book and what stands beside it, not the log of presses.
                {"RISEBOOK_DISK", (rig->folder() / "live").string()},
                {"RISEBOOK_DISK_SAYS", (rig->folder() / "disk").string()},
                {"ASAN_OPTIONS", "verify_asan_link_order=0:detect_leaks=0"},
                {"RISEBOOK_RIG_ERRORS", (rig->folder() / "errors").string()}});
  }
  void is(const char* says) const { std::ofstream(rig->folder() / "disk") << says; }
  [[nodiscard]] std::string errors() const {
    std::ifstream in(rig->folder() / "errors");
    return {std::istreambuf_iterator<char>(in), {}};
  }
  void run_r1() const {
    const auto before = rig->taken().size();
    rig->press(kRows[0], kHeld);
    require(rig->wait_taken(before + 1, Millis{5000}), "RUN R1 taken");
  }
  std::unique_ptr<Rig> rig;
};

void slow_disk(const char* program, const char* source, const char* shim) {
  const Program on(program, source, shim);
  on.is("sync-ms 2500");
  on.run_r1();
  require(on.rig->ask_to_end(SIGTERM, kMostLeaving) == 0, "on a slow disk it ends with 0");
  on.is("");
  const auto kept = on.rig->kept();
  require(kept.size() == 1 && kept[0].row == "R1", "the last tap was waited for and kept");
}

void disk_that_refuses(const char* program, const char* source, const char* shim,
                       const char* says) {
  const Program on(program, source, shim);
  on.is(says);
  on.run_r1();
  const auto from = Clock::now();
  require(on.rig->ask_to_end(SIGTERM, kMostLeaving) == 3,
          fmt::format("on a disk that is {} it ends with 3", says));
  const auto took = std::chrono::duration<double>(Clock::now() - from).count();
  const std::string told = on.errors();
  require(told.find("NOT KEPT") != std::string::npos, "it says that taps were not kept:\n" + told);
  require(told.find(R"("do":"run")") != std::string::npos && told.find("R1") != std::string::npos,
          "it prints the tap that was not kept:\n" + told);
  fmt::print("disk {}: ended after {:.1f} s with the tap told\n", says, took);
}

void window_closed(const char* program, const char* source, const char* shim) {
  const Program on(program, source, shim);
  on.is("dead");
  on.run_r1();
  on.rig->close_window();
  std::this_thread::sleep_for(Millis{3000});
  require(waitpid(on.rig->pid(), nullptr, WNOHANG) == 0, "closing the window asks first");
  on.is("");
  std::this_thread::sleep_for(Millis{4000});
  on.rig->close_window();
  require(on.rig->wait_end(kMostLeaving) == 0, "with all kept it closes");
  require(on.rig->kept().size() == 1, "the tap was kept once the disk was well");
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 4) return 2;
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  slow_disk(argv[1], argv[2], argv[3]);
  disk_that_refuses(argv[1], argv[2], argv[3], "dead");
  disk_that_refuses(argv[1], argv[2], argv[3], "room 0");
  disk_that_refuses(argv[1], argv[2], argv[3], "sync-ms 600000");
  window_closed(argv[1], argv[2], argv[3]);
  fmt::print(
      "asked to end, it waits for the disk as long as that goes on, and tells what it lost\n");
  return 0;
}
