#include "tablet/awake.h"

#include <X11/Xlib.h>
#include <X11/extensions/dpms.h>
#include <X11/extensions/scrnsaver.h>
#include <fcntl.h>
#include <systemd/sd-bus.h>
#include <unistd.h>

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <thread>

namespace rb::app {

namespace {

constexpr std::uint64_t kPatienceUs = 5'000'000;  // of the login manager
constexpr Seconds kAgain{60};                     // asked again while it is not to be had

// The X server: suspended while we say so and are there.
class XSaver {
 public:
  XSaver() : display_(XOpenDisplay(nullptr)) {
    int event = 0;
    int error = 0;
    if (display_ != nullptr && XScreenSaverQueryExtension(display_, &event, &error) == 0) {
      XCloseDisplay(display_);
      display_ = nullptr;
    }
  }
  ~XSaver() {
    if (display_ != nullptr) XCloseDisplay(display_);
  }
  XSaver(const XSaver&) = delete;
  XSaver& operator=(const XSaver&) = delete;

  void hold(bool on) {
    if (display_ == nullptr) return;
    XScreenSaverSuspend(display_, on ? True : False);
    if (on) {  // one that sleeps already is woken
      XForceScreenSaver(display_, ScreenSaverReset);
      wake_screen();
    }
    XSync(display_, False);
  }

 private:
  void wake_screen() {
    int event = 0;
    int error = 0;
    if (DPMSQueryExtension(display_, &event, &error) == 0 || DPMSCapable(display_) == 0) return;
    CARD16 level = 0;
    BOOL enabled = 0;
    if (DPMSInfo(display_, &level, &enabled) != 0 && enabled != 0 && level != DPMSModeOn) {
      DPMSForceLevel(display_, DPMSModeOn);
    }
  }
  Display* display_;
};

// The login manager: an inhibitor is a file that stays open.
class LoginLock {
 public:
  ~LoginLock() { hold(false); }
  LoginLock() = default;
  LoginLock(const LoginLock&) = delete;
  LoginLock& operator=(const LoginLock&) = delete;

  [[nodiscard]] bool held() const { return fd_ >= 0; }
  void hold(bool on) {
    if (!on && fd_ >= 0) {
      close(fd_);
      fd_ = -1;
    }
    // Sleep may be more than this user may hold off; idle is what turns the display dark.
    if (on && fd_ < 0 && !ask("idle:sleep")) ask("idle");
  }

 private:
  bool ask(const char* what) {
    sd_bus* bus = nullptr;
    if (sd_bus_open_system(&bus) < 0) return false;
    sd_bus_set_method_call_timeout(bus, kPatienceUs);
    sd_bus_message* reply = nullptr;
    int fd = -1;
    if (sd_bus_call_method(bus, "org.freedesktop.login1", "/org/freedesktop/login1",
                           "org.freedesktop.login1.Manager", "Inhibit", nullptr, &reply, "ssss",
                           what, "Risebook", "a row runs or a lift is placed", "block") >= 0 &&
        sd_bus_message_read(reply, "h", &fd) >= 0) {
      fd_ = fcntl(fd, F_DUPFD_CLOEXEC, 3);  // the reply closes its own
    }
    sd_bus_message_unref(reply);
    sd_bus_flush_close_unref(bus);
    return fd_ >= 0;
  }
  int fd_ = -1;
};

}  // namespace

bool work_goes_on(const screens::World& world) {
  if (world.state != nullptr) {
    const auto runs = [](const auto& run) { return !run.to; };
    if (std::any_of(world.state->runs.begin(), world.state->runs.end(), runs)) return true;
    for (std::size_t i = 0; i < world.state->elements.size(); ++i) {
      if (world.state->placing(i) != nullptr) return true;
    }
  }
  if (world.pours == nullptr) return false;
  return std::any_of(world.pours->begin(), world.pours->end(), [&](const screens::PourCard& card) {
    // The pour shown is told by its state: its card may be older.
    if (world.state != nullptr && card.id == world.state->pour) return false;
    return !card.closed && (card.rows_running > 0 || !card.placing.empty());
  });
}

struct Awake::Inside {
  std::mutex lock;
  std::condition_variable told;
  bool wanted = false;
  bool leave = false;
  std::thread thread;

  void run() {
    XSaver saver;
    LoginLock login;
    bool on = false;
    std::unique_lock guard(lock);
    for (;;) {
      const auto news = [&] { return leave || wanted != on; };
      if (on && !login.held()) {
        told.wait_for(guard, kAgain, news);
      } else {
        told.wait(guard, news);
      }
      if (leave) return;
      const bool changed = wanted != on;
      on = wanted;
      guard.unlock();
      if (changed) saver.hold(on);
      login.hold(on);
      guard.lock();
    }
  }
};

Awake::Awake() : in_(std::make_unique<Inside>()) {
  in_->thread = std::thread([in = in_.get()] { in->run(); });
}

Awake::~Awake() {
  {
    const std::lock_guard guard(in_->lock);
    in_->leave = true;
  }
  in_->told.notify_one();
  in_->thread.join();
}

void Awake::hold(bool on) {
  {
    const std::lock_guard guard(in_->lock);
    if (in_->wanted == on) return;
    in_->wanted = on;
  }
  in_->told.notify_one();
}

}  // namespace rb::app
