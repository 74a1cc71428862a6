// While a row runs the display does not sleep and the login manager is asked to hold off; at rest
// both are let go. The X server is a real one with a screen saver of two seconds; the login manager
// is played by this program on a bus of its own.
// Usage: window_awake RISEBOOK SOURCE_DIR
#include <X11/extensions/scrnsaver.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <systemd/sd-bus.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cstring>
#include <fstream>
#include <mutex>
#include <thread>

#include "rig.h"

using namespace rb::rig;

namespace {

constexpr int kSaverSeconds = 2;

// A bus on which anyone may be the login manager.
class Bus {
 public:
  explicit Bus(const std::filesystem::path& folder) {
    const auto config = folder / "bus.conf";
    std::ofstream(config)
        << "<!DOCTYPE busconfig PUBLIC \"-//freedesktop//DTD D-Bus Bus "
           "Configuration 1.0//EN\" "
           "\"http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd\">\n"
        << "<busconfig><listen>unix:path=" << (folder / "bus").string()
        << "</listen><policy context=\"default\"><allow send_destination=\"*\"/>"
        << "<allow eavesdrop=\"false\"/><allow own=\"*\"/></policy></busconfig>\n";
    pid_ = fork();
    if (pid_ == 0) {
      const std::string file = "--config-file=" + config.string();
      execlp("dbus-daemon", "dbus-daemon", file.c_str(), "--nofork", nullptr);
      _exit(127);
    }
    address_ = "unix:path=" + (folder / "bus").string();
    for (int tries = 0; tries < 50 && !std::filesystem::exists(folder / "bus"); ++tries) {
      std::this_thread::sleep_for(Millis{100});
    }
  }
  ~Bus() {
    kill(pid_, SIGTERM);
    waitpid(pid_, nullptr, 0);
  }
  Bus(const Bus&) = delete;
  Bus& operator=(const Bus&) = delete;
  [[nodiscard]] const std::string& address() const { return address_; }

 private:
  pid_t pid_ = 0;
  std::string address_;
};

// Plays the login manager: gives out inhibitors and sees when they are let go.
class LoginManager {
 public:
  explicit LoginManager(const std::string& address) {
    require(sd_bus_new(&bus_) >= 0 && sd_bus_set_address(bus_, address.c_str()) >= 0 &&
                sd_bus_set_bus_client(bus_, 1) >= 0 && sd_bus_start(bus_) >= 0,
            "a bus (the package dbus-daemon)");
    static const std::array<sd_bus_vtable, 3> table{
        sd_bus_vtable SD_BUS_VTABLE_START(0),
        SD_BUS_METHOD("Inhibit", "ssss", "h", on_inhibit, SD_BUS_VTABLE_UNPRIVILEGED),
        sd_bus_vtable SD_BUS_VTABLE_END};
    require(sd_bus_add_object_vtable(bus_, nullptr, "/org/freedesktop/login1",
                                     "org.freedesktop.login1.Manager", table.data(), this) >= 0 &&
                sd_bus_request_name(bus_, "org.freedesktop.login1", 0) >= 0,
            "the login manager's name");
    thread_ = std::thread([this] {
      while (!leave_) {
        if (sd_bus_process(bus_, nullptr) == 0) sd_bus_wait(bus_, 100'000);
      }
    });
  }
  ~LoginManager() {
    leave_ = true;
    thread_.join();
    sd_bus_flush_close_unref(bus_);
  }
  LoginManager(const LoginManager&) = delete;
  LoginManager& operator=(const LoginManager&) = delete;

  /// An inhibitor is out: nobody has closed it.
  bool held() {
    const std::lock_guard guard(lock_);
    if (watched_ < 0) return false;
    char byte = 0;
    const ssize_t got = read(watched_, &byte, 1);
    return got < 0 && (errno == EAGAIN || errno == EWOULDBLOCK);
  }
  std::string asked() {
    const std::lock_guard guard(lock_);
    return asked_;
  }

 private:
  static int on_inhibit(sd_bus_message* message, void* self, sd_bus_error*) {
    auto& manager = *static_cast<LoginManager*>(self);
    std::array<const char*, 4> words{};
    sd_bus_message_read(message, "ssss", &words[0], &words[1], &words[2], &words[3]);
    std::array<int, 2> ends{};
    if (pipe2(ends.data(), O_CLOEXEC | O_NONBLOCK) != 0) return -errno;
    {
      const std::lock_guard guard(manager.lock_);
      manager.asked_ = fmt::format("{} by {}: {} ({})", words[0], words[1], words[2], words[3]);
      if (manager.watched_ >= 0) close(manager.watched_);
      manager.watched_ = ends[0];
    }
    const int sent = sd_bus_reply_method_return(message, "h", ends[1]);
    close(ends[1]);
    return sent;
  }
  sd_bus* bus_ = nullptr;
  std::mutex lock_;
  int watched_ = -1;
  std::string asked_;
  std::atomic<bool> leave_{false};
  std::thread thread_;
};

bool saver_on(Display* display) {
  XScreenSaverInfo* info = XScreenSaverAllocInfo();
  XScreenSaverQueryInfo(display, DefaultRootWindow(display), info);
  const bool on = info->state == ScreenSaverOn;
  XFree(info);
  return on;
}

// The saver came on within a while in which nothing was touched.
bool sleeps(Display* display) {
  for (int tenth = 0; tenth < kSaverSeconds * 10 + 40; ++tenth) {
    if (saver_on(display)) return true;
    std::this_thread::sleep_for(Millis{100});
  }
  return false;
}

bool within(Millis at_most, const auto& so) {
  const auto until = Clock::now() + at_most;
  while (!so()) {
    if (Clock::now() > until) return false;
    std::this_thread::sleep_for(Millis{50});
  }
  return true;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  auto* rig = new Rig(argv[1], argv[2]);
  const Bus bus(rig->folder());
  LoginManager manager(bus.address());
  rig->start({{"DBUS_SYSTEM_BUS_ADDRESS", bus.address()}});
  XSetScreenSaver(rig->display(), kSaverSeconds, 0, PreferBlanking, AllowExposures);
  XSync(rig->display(), False);

  require(sleeps(rig->display()), "at rest the display sleeps");
  require(!manager.held(), "at rest nothing is held");
  // The first press wakes the display; the second runs the row.
  rig->press({640, 115}, Millis{50});
  std::this_thread::sleep_for(Millis{800});
  rig->press(kRows[0], Millis{50});
  require(within(Millis{5000}, [&] { return manager.held(); }),
          "while a row runs the login manager is asked to hold off");
  require(!sleeps(rig->display()), "while a row runs the display does not sleep");
  const std::string asked = manager.asked();
  rig->press(kRows[0], Millis{50});
  require(within(Millis{5000}, [&] { return !manager.held(); }),
          "at rest the login manager is let go");
  require(sleeps(rig->display()), "at rest the display sleeps again");
  rig->press({640, 115}, Millis{50});
  std::this_thread::sleep_for(Millis{800});
  rig->press(kStartLift, Millis{50});
  require(within(Millis{5000}, [&] { return manager.held(); }),
          "a lift that is placed holds off, too");
  require(!sleeps(rig->display()), "while a lift is placed the display does not sleep");
  kill(rig->pid(), SIGKILL);
  require(within(Millis{5000}, [&] { return !manager.held(); }), "killed, it lets go");
  require(sleeps(rig->display()), "killed, the display sleeps again");
  fmt::print(
      "asked of the login manager: {}\nThe display stays awake while work goes on, and no "
      "longer.\n",
      asked);
  delete rig;
  return 0;
}
