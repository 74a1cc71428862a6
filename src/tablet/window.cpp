#include "tablet/window.h"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_opengl3.h>
#include <dlfcn.h>
#include <imgui.h>
#include <malloc.h>

#include <algorithm>
#include <mutex>

#include "tablet/awake.h"
#include "tablet/touch_queue.h"
#include "tablet/x_input.h"

namespace rb::app {

namespace {

constexpr double kLongestWait = 0.5;   // a stop request is seen within this, in seconds
constexpr int kSettleFrames = 2;       // drawn after any input, so that what it changed is seen
constexpr Seconds kDrawAtLeast{0.05};  // while presses wait their pictures are not drawn, this long
constexpr long kFirstFrames = 3;       // making fonts and textures is no standing still

// What another thread may say to the window, whether there is one or not.
struct Waker {
  std::mutex mutex;
  bool listening = false;
  std::atomic<bool> changed{false};
} g_waker;

struct Glfw {
  bool up = glfwInit() == GLFW_TRUE;
  ~Glfw() {
    listen(false);
    if (up) glfwTerminate();
  }
  Glfw() { listen(up); }
  static void listen(bool on) {
    const std::lock_guard lock(g_waker.mutex);
    g_waker.listening = on;
  }
  Glfw(const Glfw&) = delete;
  Glfw& operator=(const Glfw&) = delete;
};

struct Events {
  TouchQueue queue;
  std::unique_ptr<XInput> presses;  ///< where there is an X server; else presses come by callback
  bool damaged = true;              ///< the picture must be drawn again
};

Seconds steady_now() {
  return std::chrono::steady_clock::now().time_since_epoch();
}
Moment wall_now() {
  return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

Events& events_of(GLFWwindow* window) {
  return *static_cast<Events*>(glfwGetWindowUserPointer(window));
}

// Where the cursor is, in pixels of the picture (a window's own units may differ from them).
screens::Point in_pixels(GLFWwindow* window, double x, double y) {
  int wide = 1;
  int tall = 1;
  int px = 1;
  int py = 1;
  glfwGetWindowSize(window, &wide, &tall);
  glfwGetFramebufferSize(window, &px, &py);
  return {static_cast<float>(x * px / std::max(wide, 1)),
          static_cast<float>(y * py / std::max(tall, 1))};
}

// The X window under the toolkit's, 0 where it has none: a toolkit built for another window system
// has no such call.
unsigned long x_window(GLFWwindow* window) {
  using Ask = unsigned long (*)(GLFWwindow*);
  const auto ask = reinterpret_cast<Ask>(dlsym(RTLD_DEFAULT, "glfwGetX11Window"));
  return ask != nullptr ? ask(window) : 0;
}

void listen(GLFWwindow* window, Events& events) {
  glfwSetWindowUserPointer(window, &events);
  if (const unsigned long under = x_window(window); under != 0) {
    if (auto presses = XInput::listen(under, glfwPostEmptyEvent)) {
      events.presses = std::move(*presses);
    }
  }
  glfwSetCursorPosCallback(window, [](GLFWwindow* w, double x, double y) {
    events_of(w).queue.moved(in_pixels(w, x, y), wall_now(), steady_now());
  });
  glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int button, int action, int) {
    if (button != GLFW_MOUSE_BUTTON_LEFT) return;
    double x = 0;
    double y = 0;
    glfwGetCursorPos(w, &x, &y);
    // Every change carries its own place: the cursor may have moved on by the time it is looked at.
    events_of(w).queue.moved(in_pixels(w, x, y), wall_now(), steady_now());
    events_of(w).queue.pressed(action == GLFW_PRESS, wall_now(), steady_now());
  });
  glfwSetCharCallback(window, [](GLFWwindow* w, unsigned code) {
    events_of(w).queue.letter(static_cast<char32_t>(code));
  });
  glfwSetKeyCallback(window, [](GLFWwindow* w, int key, int, int action, int) {
    if (action == GLFW_RELEASE) return;
    if (key == GLFW_KEY_BACKSPACE) events_of(w).queue.erase();
    if (key == GLFW_KEY_ESCAPE && action == GLFW_PRESS) events_of(w).queue.escape();
  });
  glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { events_of(w).damaged = true; });
  glfwSetFramebufferSizeCallback(window,
                                 [](GLFWwindow* w, int, int) { events_of(w).damaged = true; });
}

class Loop {
 public:
  Loop(GLFWwindow* window, Events& events, screens::Ui& ui, const Program& program, bool always)
      : window_(window), events_(events), ui_(ui), program_(program), always_(always) {}

  WindowReport run() {
    Seconds due = steady_now();
    back_ = due;
    while (!closing() && !stopping()) {
      watch(due);
      const bool answered = g_waker.changed.exchange(false);
      const bool asked = !events_.queue.empty() || events_.damaged || always_ || answered || stall_;
      if (!asked && settle_ <= 0 && steady_now() < due) continue;
      if (!asked && settle_ > 0) --settle_;
      if (asked) settle_ = kSettleFrames;
      events_.damaged = false;
      int width = 0;
      int height = 0;
      glfwGetFramebufferSize(window_, &width, &height);
      if (width <= 0 || height <= 0) {  // nothing to be seen: taps cannot come either
        due = steady_now() + Seconds{kLongestWait};
        settle_ = 0;
        continue;
      }
      const screens::UiOutput out = frame(width, height);
      due = steady_now() + out.next_change;
      if (out.tone && program_.sound) program_.sound(*out.tone);
      if (out.press && program_.pressed) program_.pressed(*out.press);
      if (!out.intents.empty()) {
        settle_ = kSettleFrames;
        if (!program_.act(out.intents)) break;
      }
    }
    return report_;
  }

 private:
  // The window's own way out asks as the screen's does, when something would be lost.
  bool closing() {
    if (glfwWindowShouldClose(window_) == GLFW_FALSE) return false;
    if (!program_.may_leave || program_.may_leave()) return true;
    glfwSetWindowShouldClose(window_, GLFW_FALSE);
    ui_.drafts().dialog = screens::QuitDraft{};
    events_.damaged = true;
    return false;
  }

  // Asked to leave from elsewhere: what waits for the disk gets its time, in sight.
  bool stopping() {
    if (program_.stop == nullptr || !*program_.stop) return false;
    const std::size_t left = program_.would_lose ? program_.would_lose() : 0;
    const Seconds now = steady_now();
    if (!stop_since_ || left < left_) {
      stop_since_ = now;
      events_.damaged = true;
    }
    left_ = left;
    return left == 0 || now - *stop_since_ >= program_.patience;
  }

  // Waits, takes what has come in, and notes whether the loop stood still meanwhile.
  void watch(Seconds due) {
    const std::size_t before = events_.queue.touches();
    const Seconds from = steady_now();
    const Seconds allowed = wait(due);
    const Seconds now = steady_now();
    const Seconds stood = std::max(from - back_, now - from - allowed);
    back_ = now;
    const bool still = stood > kStall && report_.frames > kFirstFrames;
    if (still) {
      ++report_.stalls;
      stall_ = screens::Stall{stood, events_.presses != nullptr};
    }
    if (events_.presses == nullptr) {
      if (still) events_.queue.doubt_since(before, stood);
      return;
    }
    for (screens::Touch& touch : events_.presses->take()) {
      touch.at = in_pixels(window_, touch.at.x, touch.at.y);
      events_.queue.add(touch);
    }
  }

  // How long it was let wait.
  Seconds wait(Seconds due) {
    const double gap = (steady_now() - polled_ - drawing_).count() * 1000;
    if (report_.frames > 2) report_.gap_max_ms = std::max(report_.gap_max_ms, gap);
    drawing_ = Seconds{0};
    const double left = std::min((due - steady_now()).count(), kLongestWait);
    if (!events_.queue.empty() || settle_ > 0 || events_.damaged || always_ || left <= 0) {
      glfwPollEvents();
      polled_ = steady_now();
      return Seconds{0};
    }
    glfwWaitEventsTimeout(left);
    polled_ = steady_now();
    return Seconds{left};
  }

  screens::UiOutput frame(int width, int height) {
    const Seconds began = steady_now();
    screens::UiInput input;
    input.width_px = width;
    input.height_px = height;
    input.touch = events_.queue.next_touch();
    input.typed = events_.queue.take_typed();
    input.escape = events_.queue.take_escape();
    input.passed = began - last_;
    input.steady = began;
    input.stall = std::exchange(stall_, {});
    last_ = began;
    const screens::World world = program_.look(wall_now());
    awake_.hold(work_goes_on(world));
    const Seconds drawn = steady_now();
    screens::UiOutput out = ui_.frame(input, world);
    const double built = (steady_now() - began).count() * 1000;
    report_.build_max_ms = std::max(report_.build_max_ms, report_.frames > 2 ? built : 0.0);
    ++report_.frames;
    // What nobody can have seen yet is not drawn while presses wait.
    if (events_.queue.touches() > 0 && began - drawn_ < kDrawAtLeast) {
      drawing_ = steady_now() - drawn;
      return out;
    }
    drawn_ = began;
    if (fonts_version_ != ui_.fonts_version()) {
      ImGui_ImplOpenGL3_DestroyFontsTexture();
      ImGui_ImplOpenGL3_CreateFontsTexture();
      fonts_version_ = ui_.fonts_version();
    }
    ImGui_ImplOpenGL3_NewFrame();
    glViewport(0, 0, width, height);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(window_);
    drawing_ = steady_now() - drawn;
    ui_.shown(steady_now());
    return out;
  }

  GLFWwindow* window_;
  Events& events_;
  screens::Ui& ui_;
  const Program& program_;
  const bool always_;
  WindowReport report_;
  Awake awake_;
  std::optional<screens::Stall> stall_;  ///< not yet told
  std::optional<Seconds> stop_since_;    ///< or since less is left
  std::size_t left_ = 0;
  Seconds last_ = steady_now();
  Seconds polled_ = steady_now(), drawing_{0};
  Seconds back_{};   ///< when the loop last came round
  Seconds drawn_{};  ///< when a picture was last begun that was shown
  int settle_ = kSettleFrames;
  int fonts_version_ = 0;
};

}  // namespace

void wake_window() {
  g_waker.changed = true;
  const std::lock_guard lock(g_waker.mutex);
  if (g_waker.listening) glfwPostEmptyEvent();
}

namespace {

// A drawing library asks for its buffers anew at every frame: memory given back to the system
// between two of them comes back page by page, which a frame a second would pay for without end.
void keep_freed_memory() {
#ifdef __GLIBC__
  mallopt(M_TRIM_THRESHOLD, 64 << 20);
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
#endif
}

}  // namespace

Result<WindowReport> show(const WindowSpec& spec, screens::Ui& ui, const Program& program) {
  keep_freed_memory();
  const Glfw glfw;
  if (!glfw.up) {
    const char* why = nullptr;
    glfwGetError(&why);
    return fail(Error::Kind::input, said("opening the screens"),
                why != nullptr
                    ? Saying{said("there is no display to draw on ({why})"), {{"why", why}}}
                    : Saying{said("there is no display to draw on")},
                said("The commands demo, replay, check, dose, record, script, verify, calc and "
                     "picture need none: risebook --help"));
  }
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  GLFWmonitor* monitor = spec.full_screen ? glfwGetPrimaryMonitor() : nullptr;
  int width = spec.width;
  int height = spec.height;
  if (const GLFWvidmode* mode = monitor != nullptr ? glfwGetVideoMode(monitor) : nullptr) {
    width = mode->width;
    height = mode->height;
  }
  GLFWwindow* window = glfwCreateWindow(width, height, spec.title.c_str(), monitor, nullptr);
  if (window == nullptr) {
    return fail(Error::Kind::input, said("opening the screens"),
                said("this display has no OpenGL 3.3"),
                said("Install the Debian package libgl1-mesa-dri"));
  }
  glfwMakeContextCurrent(window);
  glfwSwapInterval(1);
  Events events;
  listen(window, events);
  ImGui_ImplOpenGL3_Init("#version 330 core");
  const WindowReport report = Loop(window, events, ui, program, spec.always_redraw).run();
  events.presses.reset();
  ImGui_ImplOpenGL3_Shutdown();
  glfwDestroyWindow(window);
  return report;
}

}  // namespace rb::app
