#include "app/window.h"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <algorithm>
#include <mutex>

#include "app/touch_queue.h"

namespace rb::app {

namespace {

constexpr double kLongestWait = 0.5;  // a stop request is seen within this, in seconds
constexpr int kSettleFrames = 2;      // drawn after any input, so that what it changed is seen

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
  bool damaged = true;  ///< the picture must be drawn again
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

void listen(GLFWwindow* window, Events& events) {
  glfwSetWindowUserPointer(window, &events);
  glfwSetCursorPosCallback(window, [](GLFWwindow* w, double x, double y) {
    events_of(w).queue.moved(in_pixels(w, x, y));
  });
  glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int button, int action, int) {
    if (button != GLFW_MOUSE_BUTTON_LEFT) return;
    double x = 0;
    double y = 0;
    glfwGetCursorPos(w, &x, &y);
    // Every change carries its own place: the cursor may have moved on by the time it is looked at.
    events_of(w).queue.moved(in_pixels(w, x, y));
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
    while (!closing() && (program_.stop == nullptr || !*program_.stop)) {
      wait(due);
      const bool answered = g_waker.changed.exchange(false);
      const bool asked = !events_.queue.empty() || events_.damaged || always_ || answered;
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

  void wait(Seconds due) {
    const double gap = (steady_now() - polled_ - drawing_).count() * 1000;
    if (report_.frames > 2) report_.gap_max_ms = std::max(report_.gap_max_ms, gap);
    drawing_ = Seconds{0};
    const double left = std::min((due - steady_now()).count(), kLongestWait);
    if (!events_.queue.empty() || settle_ > 0 || events_.damaged || always_ || left <= 0) {
      glfwPollEvents();
    } else {
      glfwWaitEventsTimeout(left);
    }
    polled_ = steady_now();
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
    last_ = began;
    const screens::World world = program_.look(wall_now());
    const Seconds drawn = steady_now();
    screens::UiOutput out = ui_.frame(input, world);
    const double built = (steady_now() - began).count() * 1000;
    report_.build_max_ms = std::max(report_.build_max_ms, report_.frames > 2 ? built : 0.0);
    ++report_.frames;
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
    return out;
  }

  GLFWwindow* window_;
  Events& events_;
  screens::Ui& ui_;
  const Program& program_;
  const bool always_;
  WindowReport report_;
  Seconds last_ = steady_now();
  Seconds polled_ = steady_now(), drawing_{0};
  int settle_ = kSettleFrames;
  int fonts_version_ = 0;
};

}  // namespace

void wake_window() {
  g_waker.changed = true;
  const std::lock_guard lock(g_waker.mutex);
  if (g_waker.listening) glfwPostEmptyEvent();
}

Result<WindowReport> show(const WindowSpec& spec, screens::Ui& ui, const Program& program) {
  const Glfw glfw;
  if (!glfw.up) {
    const char* why = nullptr;
    glfwGetError(&why);
    return fail(Error::Kind::input, "opening the screens",
                std::string{"there is no display to draw on"} +
                    (why != nullptr ? fmt::format(" ({})", why) : std::string{}),
                "The commands demo, replay, check, dose, record, script, verify, calc and picture "
                "need none: risebook --help");
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
    return fail(Error::Kind::input, "opening the screens", "this display has no OpenGL 3.3",
                "Install the Debian package libgl1-mesa-dri");
  }
  glfwMakeContextCurrent(window);
  glfwSwapInterval(1);
  Events events;
  listen(window, events);
  ImGui_ImplOpenGL3_Init("#version 330 core");
  const WindowReport report = Loop(window, events, ui, program, spec.always_redraw).run();
  ImGui_ImplOpenGL3_Shutdown();
  glfwDestroyWindow(window);
  return report;
}

}  // namespace rb::app
