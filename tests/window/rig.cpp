#include "rig.h"

#include <X11/extensions/XTest.h>
#include <X11/keysym.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <thread>

#include "base/moment.h"

namespace rb::rig {

namespace {

constexpr int kBegun = 19;  // lines of the demo pour: open, hung, tested, nothing placed
constexpr const char* kPour = "CW2-L14";

Rig* g_rig = nullptr;

Clock::time_point moment_of(const std::string& text) {
  const auto at = parse_moment(text);
  require(at.has_value(), "a moment that reads: " + text);
  return *at;
}

std::string run(const std::string& command) {
  std::string out;
  FILE* pipe = popen(command.c_str(), "r");
  require(pipe != nullptr, command);
  std::array<char, 4096> part{};
  while (const std::size_t got = fread(part.data(), 1, part.size(), pipe)) {
    out.append(part.data(), got);
  }
  pclose(pipe);
  return out;
}

Window find_window(Display* display, Window under) {
  char* name = nullptr;
  if (XFetchName(display, under, &name) != 0) {
    const bool ours = std::string(name) == "Risebook";
    XFree(name);
    if (ours) return under;
  }
  Window root = 0;
  Window parent = 0;
  Window* below = nullptr;
  unsigned count = 0;
  if (XQueryTree(display, under, &root, &parent, &below, &count) == 0) return 0;
  Window found = 0;
  for (unsigned i = 0; i < count && found == 0; ++i) found = find_window(display, below[i]);
  if (below != nullptr) XFree(below);
  return found;
}

}  // namespace

void require(bool so, const std::string& what) {
  if (so) return;
  fmt::print("FAILED: {}\n", what);
  delete std::exchange(g_rig, nullptr);
  std::exit(1);
}

Rig::Rig(std::filesystem::path program, const std::filesystem::path& source)
    : program_(std::move(program)) {
  g_rig = this;
  std::string name = (std::filesystem::temp_directory_path() / "risebook-rig-XXXXXX").string();
  require(mkdtemp(name.data()) != nullptr, "a folder to work in");
  folder_ = name;
  start_server();
  std::ifstream demo(source / "assets/demo-pour.jsonl");
  std::ofstream begun(folder_ / "begun.jsonl");
  std::string line;
  for (int i = 0; i < kBegun && std::getline(demo, line); ++i) begun << line << '\n';
  // All rows hang, so that a tap on any runs it.
  for (const char* row : {"R3", "R4"}) {
    begun
        << fmt::format(
               R"({{"at":"2026-03-02T05:06:30.000Z","by":"ih","do":"hang","element":"CW2","row":"{}",)"
               R"("motors":[],"cables":true}})",
               row)
        << '\n';
  }
  begun.close();
  run(fmt::format("'{}' replay '{}' --book '{}'", program_.string(),
                  (folder_ / "begun.jsonl").string(), (folder_ / "live.risebook").string()));
  began_with_ = kept().size();
  require(began_with_ > 0, "a book to begin with");
}

Rig::~Rig() {
  g_rig = nullptr;
  if (program_pid_ != 0) {
    kill(program_pid_, SIGKILL);
    waitpid(program_pid_, nullptr, 0);
  }
  if (display_ != nullptr) XCloseDisplay(display_);
  if (server_pid_ != 0) {
    kill(server_pid_, SIGTERM);
    waitpid(server_pid_, nullptr, 0);
  }
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

void Rig::start_server() {
  std::array<int, 2> told{};
  require(pipe(told.data()) == 0, "a pipe");
  server_pid_ = fork();
  if (server_pid_ == 0) {
    const int quiet = open("/dev/null", O_WRONLY);
    dup2(quiet, 2);
    const std::string fd = std::to_string(told[1]);
    execlp("Xvfb", "Xvfb", "-displayfd", fd.c_str(), "-screen", "0", "1280x800x24", "-noreset",
           nullptr);
    _exit(127);
  }
  close(told[1]);
  std::array<char, 32> number{};
  const ssize_t got = read(told[0], number.data(), number.size() - 1);
  close(told[0]);
  require(got > 0, "an X server (the package xvfb)");
  display_name_ = fmt::format(":{}", std::atoi(number.data()));
  display_ = XOpenDisplay(display_name_.c_str());
  require(display_ != nullptr, "a display");
}

void Rig::start(const std::map<std::string, std::string>& environment) {
  program_pid_ = fork();
  if (program_pid_ == 0) {
    setenv("DISPLAY", display_name_.c_str(), 1);
    setenv("XDG_CONFIG_HOME", (folder_ / "config").c_str(), 1);
    setenv("XDG_DATA_HOME", (folder_ / "data").c_str(), 1);
    for (const auto& [name, value] : environment) setenv(name.c_str(), value.c_str(), 1);
    if (const auto errors = environment.find("RISEBOOK_RIG_ERRORS"); errors != environment.end()) {
      dup2(open(errors->second.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), 2);
    }
    const std::string book = (folder_ / "live.risebook").string();
    const std::string log = (folder_ / "presses.jsonl").string();
    execl(program_.c_str(), "risebook", book.c_str(), "--width", "1280", "--height", "800",
          "--log-presses", log.c_str(), nullptr);
    _exit(127);
  }
  for (int tries = 0; tries < 300 && window_ == 0; ++tries) {
    std::this_thread::sleep_for(Millis{100});
    window_ = find_window(display_, DefaultRootWindow(display_));
  }
  require(window_ != 0, "a window");
  XMoveWindow(display_, window_, 0, 0);
  // Pressed where nothing is until it answers.
  for (int tries = 0; tries < 100 && taken().empty(); ++tries) {
    press({640, 115}, Millis{30});
    std::this_thread::sleep_for(Millis{300});
  }
  require(!taken().empty(), "an answer to a press");
  XSetInputFocus(display_, window_, RevertToParent, CurrentTime);
  XSync(display_, False);
  std::this_thread::sleep_for(Millis{500});
  std::filesystem::resize_file(folder_ / "presses.jsonl", 0);
}

bool Rig::stop() {
  return ask_to_end(SIGTERM, Millis{30'000}) >= 0;
}

int Rig::ask_to_end(int signal, Millis at_most) {
  kill(program_pid_, signal);
  return wait_end(at_most);
}

int Rig::wait_end(Millis at_most) {
  const auto until = Clock::now() + at_most;
  for (;;) {
    int status = 0;
    if (waitpid(program_pid_, &status, WNOHANG) == program_pid_) {
      program_pid_ = 0;
      window_ = 0;
      return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
    }
    if (Clock::now() > until) return -1;
    std::this_thread::sleep_for(Millis{100});
  }
}

void Rig::close_window() {
  XEvent event{};
  event.xclient.type = ClientMessage;
  event.xclient.window = window_;
  event.xclient.message_type = XInternAtom(display_, "WM_PROTOCOLS", False);
  event.xclient.format = 32;
  event.xclient.data.l[0] = static_cast<long>(XInternAtom(display_, "WM_DELETE_WINDOW", False));
  event.xclient.data.l[1] = CurrentTime;
  XSendEvent(display_, window_, False, NoEventMask, &event);
  XSync(display_, False);
}

Made Rig::press(Place at, Millis held) {
  XTestFakeMotionEvent(display_, -1, at.x, at.y, CurrentTime);
  XSync(display_, False);
  const auto before = Clock::now();
  XTestFakeButtonEvent(display_, 1, True, CurrentTime);
  XSync(display_, False);
  const auto after = Clock::now();
  std::this_thread::sleep_for(held);
  XTestFakeButtonEvent(display_, 1, False, CurrentTime);
  XSync(display_, False);
  return {at, before + (after - before) / 2,
          std::chrono::duration<double, std::milli>(after - before).count() / 2};
}

void Rig::key(KeySym symbol) {
  const KeyCode code = XKeysymToKeycode(display_, symbol);
  XTestFakeKeyEvent(display_, code, True, CurrentTime);
  XTestFakeKeyEvent(display_, code, False, CurrentTime);
  XSync(display_, False);
}

std::vector<Taken> Rig::taken() const {
  std::vector<Taken> all;
  std::ifstream log(folder_ / "presses.jsonl");
  std::string line;
  while (std::getline(log, line)) {
    const auto json = nlohmann::json::parse(line, nullptr, false);
    if (!json.is_object()) continue;
    all.push_back({moment_of(json.at("at").get<std::string>()), json.at("x").get<double>(),
                   json.at("y").get<double>(), json.value("on", std::string{}),
                   json.at("end").get<std::string>()});
  }
  return all;
}

bool Rig::wait_taken(std::size_t count, Millis at_most) const {
  const auto until = Clock::now() + at_most;
  while (taken().size() < count) {
    if (Clock::now() > until) return false;
    std::this_thread::sleep_for(Millis{100});
  }
  return true;
}

std::vector<Kept> Rig::kept() const {
  const std::string text = run(fmt::format("'{}' script --book '{}' --pour {}", program_.string(),
                                           (folder_ / "live.risebook").string(), kPour));
  std::vector<Kept> all;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t to = std::min(text.find('\n', from), text.size());
    const auto json = nlohmann::json::parse(text.substr(from, to - from));
    from = to + 1;
    all.push_back({json.at("do").get<std::string>(), json.value("row", std::string{}),
                   moment_of(json.at("at").get<std::string>())});
  }
  if (all.size() >= began_with_) {
    all.erase(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(began_with_));
  }
  return all;
}

}  // namespace rb::rig
