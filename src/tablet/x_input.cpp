#include "tablet/x_input.h"

#include <X11/Xatom.h>
#include <X11/Xlib.h>
#include <X11/extensions/XInput2.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <mutex>
#include <thread>

#include "tablet/press_maker.h"

namespace rb::app {

namespace {

constexpr int kRounds = 5;  // asked of the server's clock before the first press

std::atomic<Display*> g_ours{nullptr};
XErrorHandler g_before = nullptr;

// A window that has gone is no reason to end the program; what is not ours goes the old way.
int on_error(Display* display, XErrorEvent* error) {
  if (display == g_ours.load()) return 0;
  return g_before != nullptr ? g_before(display, error) : 0;
}

Seconds now_steady() {
  return std::chrono::steady_clock::now().time_since_epoch();
}

Failed no_input(Said what) {
  return fail(
      Error::Kind::input, said("listening for presses"), what,
      said("Presses are taken from the window toolkit instead; their times are not as sure"));
}

PointerChange::Kind kind_of(int type) {
  switch (type) {
    case XI_ButtonPress:
      return PointerChange::Kind::button_down;
    case XI_ButtonRelease:
      return PointerChange::Kind::button_up;
    case XI_TouchBegin:
      return PointerChange::Kind::touch_begin;
    case XI_TouchUpdate:
      return PointerChange::Kind::touch_update;
    case XI_TouchEnd:
      return PointerChange::Kind::touch_end;
    default:
      return PointerChange::Kind::motion;
  }
}

}  // namespace

struct XInput::Inside {
  Display* display = nullptr;
  Window over = 0;  ///< takes the input
  int opcode = 0;
  bool touch = false;
  std::array<int, 2> stop{-1, -1};
  std::function<void()> wake;
  std::string told;
  PressMaker maker;
  std::mutex lock;
  std::vector<screens::Touch> come;
  std::thread thread;

  Inside() = default;
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;
  ~Inside() {
    if (thread.joinable()) {
      (void)!write(stop[1], "x", 1);
      thread.join();
    }
    if (display != nullptr) {
      if (over != 0) XDestroyWindow(display, over);
      XCloseDisplay(display);
      g_ours = nullptr;
      XSetErrorHandler(g_before);
    }
    for (const int end : stop) {
      if (end >= 0) close(end);
    }
  }

  bool ready_protocol();
  bool cover(Window window);
  void ask_the_time();
  void take(XEvent& event);
  void run();
};

bool XInput::Inside::ready_protocol() {
  int event = 0;
  int error = 0;
  if (XQueryExtension(display, "XInputExtension", &opcode, &event, &error) == 0) return false;
  int major = 2;
  int minor = 2;
  if (XIQueryVersion(display, &major, &minor) != Success || major < 2) return false;
  touch = major > 2 || minor >= 2;
  return true;
}

bool XInput::Inside::cover(Window window) {
  XWindowAttributes under{};
  if (XGetWindowAttributes(display, window, &under) == 0) return false;
  XSetWindowAttributes none{};
  over = XCreateWindow(display, window, 0, 0, static_cast<unsigned>(under.width),
                       static_cast<unsigned>(under.height), 0, 0, InputOnly, nullptr, 0, &none);
  std::array<unsigned char, XIMaskLen(XI_LASTEVENT)> bits{};
  XISetMask(bits.data(), XI_ButtonPress);
  XISetMask(bits.data(), XI_ButtonRelease);
  XISetMask(bits.data(), XI_Motion);
  if (touch) {
    XISetMask(bits.data(), XI_TouchBegin);
    XISetMask(bits.data(), XI_TouchUpdate);
    XISetMask(bits.data(), XI_TouchEnd);
  }
  XIEventMask wanted{XIAllMasterDevices, static_cast<int>(bits.size()), bits.data()};
  if (XISelectEvents(display, over, &wanted, 1) != Success) return false;
  XSelectInput(display, over, PropertyChangeMask);
  XSelectInput(display, window, StructureNotifyMask);
  XMapRaised(display, over);
  XSync(display, False);
  return true;
}

// A property set on our own window is told back with the server's time.
void XInput::Inside::ask_the_time() {
  const Atom name = XInternAtom(display, "RISEBOOK_TIME", False);
  for (int round = 0; round < kRounds; ++round) {
    XChangeProperty(display, over, name, XA_STRING, 8, PropModeReplace, nullptr, 0);
    XEvent event{};
    XWindowEvent(display, over, PropertyChangeMask, &event);
    maker.told(static_cast<std::uint32_t>(event.xproperty.time), now_steady());
  }
}

void XInput::Inside::take(XEvent& event) {
  if (event.type == ConfigureNotify && event.xconfigure.window != over) {
    XResizeWindow(display, over, static_cast<unsigned>(std::max(1, event.xconfigure.width)),
                  static_cast<unsigned>(std::max(1, event.xconfigure.height)));
    XRaiseWindow(display, over);
    return;
  }
  if (event.type != GenericEvent || event.xcookie.extension != opcode ||
      XGetEventData(display, &event.xcookie) == 0) {
    return;
  }
  const auto* told_event = static_cast<const XIDeviceEvent*>(event.xcookie.data);
  const Seconds now = now_steady();
  const PointerChange change{
      kind_of(event.xcookie.evtype),
      told_event->detail,
      (told_event->flags & XIPointerEmulated) != 0,
      static_cast<std::uint32_t>(told_event->time),
      {static_cast<float>(told_event->event_x), static_cast<float>(told_event->event_y)}};
  XFreeEventData(display, &event.xcookie);
  std::optional<screens::Touch> touch_made = maker.feed(change, now);
  if (!touch_made) return;
  const auto wall = std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
  touch_made->wall = after(wall, touch_made->steady - now);
  {
    const std::lock_guard guard(lock);
    come.push_back(*touch_made);
  }
  wake();
}

void XInput::Inside::run() {
  std::array<pollfd, 2> ends{pollfd{ConnectionNumber(display), POLLIN, 0},
                             pollfd{stop[0], POLLIN, 0}};
  for (;;) {
    while (XPending(display) > 0) {
      XEvent event{};
      XNextEvent(display, &event);
      take(event);
    }
    if (poll(ends.data(), ends.size(), -1) < 0 && errno != EINTR) return;
    if (ends[1].revents != 0 || (ends[0].revents & (POLLERR | POLLHUP)) != 0) return;
  }
}

XInput::XInput(std::unique_ptr<Inside> inside) : in_(std::move(inside)) {}
XInput::~XInput() = default;

Result<std::unique_ptr<XInput>> XInput::listen(unsigned long window, std::function<void()> wake) {
  auto in = std::make_unique<Inside>();
  in->wake = std::move(wake);
  if (pipe2(in->stop.data(), O_CLOEXEC) != 0) return no_input(said("the system gives no pipe"));
  in->display = XOpenDisplay(nullptr);
  if (in->display == nullptr) return no_input(said("there is no X server"));
  g_ours = in->display;
  g_before = XSetErrorHandler(on_error);
  if (!in->ready_protocol()) return no_input(said("the X server has no XInput 2"));
  if (!in->cover(window)) return no_input(said("the window cannot be listened to"));
  in->ask_the_time();
  in->told = fmt::format("X server, {}; times by {}", in->touch ? "fingers and pointer" : "pointer",
                         in->maker.clock().shared() ? "the clock that never steps"
                                                    : "its own clock, held to the least delay");
  Inside& inside = *in;
  in->thread = std::thread([&inside] { inside.run(); });
  return std::unique_ptr<XInput>(new XInput(std::move(in)));
}

std::vector<screens::Touch> XInput::take() {
  const std::lock_guard guard(in_->lock);
  return std::exchange(in_->come, {});
}

const std::string& XInput::told() const {
  return in_->told;
}

}  // namespace rb::app
