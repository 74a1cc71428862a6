#include "tablet/picture.h"

#include <EGL/egl.h>
#include <EGL/eglext.h>
#include <GL/gl.h>
#include <GL/glext.h>
#include <backends/imgui_impl_opengl3.h>
#include <cairo.h>
#include <imgui.h>

#include <array>
#include <cstring>

#include "app/put_whole.h"

namespace rb::app {

namespace {

template <class Function>
Function gl_function(const char* name) {
  return reinterpret_cast<Function>(eglGetProcAddress(name));  // NOLINT: how EGL hands them out
}

Failed no_gl(Said what) {
  return fail(Error::Kind::book, said("drawing a picture"), what,
              said("Install the Debian packages libegl1 and libgl1-mesa-dri"));
}

}  // namespace

struct OffscreenPainter::Inside {
  int width = 0, height = 0;
  EGLDisplay display = EGL_NO_DISPLAY;
  EGLContext context = EGL_NO_CONTEXT;
  GLuint frame = 0, colour = 0;
  bool backend = false;
  int fonts_version = 0;
};

Result<std::unique_ptr<OffscreenPainter>> OffscreenPainter::make(int width, int height) {
  std::unique_ptr<OffscreenPainter> painter(new OffscreenPainter);
  painter->in_ = std::make_unique<Inside>();
  Inside& in = *painter->in_;
  in.width = width;
  in.height = height;
  const auto platform_display =
      gl_function<PFNEGLGETPLATFORMDISPLAYEXTPROC>("eglGetPlatformDisplayEXT");
  if (platform_display != nullptr) {
    in.display = platform_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
  }
  if (in.display == EGL_NO_DISPLAY || eglInitialize(in.display, nullptr, nullptr) == EGL_FALSE) {
    in.display = EGL_NO_DISPLAY;
    return no_gl(said("this system has no EGL that draws without a display"));
  }
  eglBindAPI(EGL_OPENGL_API);
  constexpr std::array<EGLint, 7> kWanted{EGL_CONTEXT_MAJOR_VERSION,
                                          3,
                                          EGL_CONTEXT_MINOR_VERSION,
                                          3,
                                          EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                          EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                          EGL_NONE};
  in.context = eglCreateContext(in.display, EGL_NO_CONFIG_KHR, EGL_NO_CONTEXT, kWanted.data());
  if (in.context == EGL_NO_CONTEXT ||
      eglMakeCurrent(in.display, EGL_NO_SURFACE, EGL_NO_SURFACE, in.context) == EGL_FALSE) {
    return no_gl(said("this system has no OpenGL 3.3"));
  }
  const auto gen_frames = gl_function<PFNGLGENFRAMEBUFFERSPROC>("glGenFramebuffers");
  const auto bind_frame = gl_function<PFNGLBINDFRAMEBUFFERPROC>("glBindFramebuffer");
  const auto gen_buffers = gl_function<PFNGLGENRENDERBUFFERSPROC>("glGenRenderbuffers");
  const auto bind_buffer = gl_function<PFNGLBINDRENDERBUFFERPROC>("glBindRenderbuffer");
  const auto store = gl_function<PFNGLRENDERBUFFERSTORAGEPROC>("glRenderbufferStorage");
  const auto attach = gl_function<PFNGLFRAMEBUFFERRENDERBUFFERPROC>("glFramebufferRenderbuffer");
  const auto status = gl_function<PFNGLCHECKFRAMEBUFFERSTATUSPROC>("glCheckFramebufferStatus");
  gen_frames(1, &in.frame);
  bind_frame(GL_FRAMEBUFFER, in.frame);
  gen_buffers(1, &in.colour);
  bind_buffer(GL_RENDERBUFFER, in.colour);
  store(GL_RENDERBUFFER, GL_RGBA8, width, height);
  attach(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, in.colour);
  if (status(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE) {
    return no_gl(said("this size of picture cannot be drawn"));
  }
  return painter;
}

OffscreenPainter::~OffscreenPainter() {
  Inside& in = *in_;
  if (in.backend && ImGui::GetCurrentContext() != nullptr) ImGui_ImplOpenGL3_Shutdown();
  if (in.display == EGL_NO_DISPLAY) return;
  eglMakeCurrent(in.display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
  if (in.context != EGL_NO_CONTEXT) eglDestroyContext(in.display, in.context);
  eglTerminate(in.display);
}

Picture OffscreenPainter::paint(screens::Ui& ui) {
  Inside& in = *in_;
  if (!in.backend) in.backend = ImGui_ImplOpenGL3_Init("#version 330 core");
  if (in.fonts_version != ui.fonts_version()) {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
    in.fonts_version = ui.fonts_version();
    // The frame was built before its letters were in this texture: it is told of it now.
    const ImDrawData& drawn = *ImGui::GetDrawData();
    for (int list = 0; list < drawn.CmdListsCount; ++list) {
      for (ImDrawCmd& command : drawn.CmdLists[list]->CmdBuffer) {
        command.TextureId = ImGui::GetIO().Fonts->TexID;
      }
    }
  }
  ImGui_ImplOpenGL3_NewFrame();
  glViewport(0, 0, in.width, in.height);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  const auto row = static_cast<std::size_t>(in.width) * 4;
  Picture upside_down{in.width, in.height,
                      std::vector<std::uint8_t>(row * static_cast<std::size_t>(in.height))};
  glReadPixels(0, 0, in.width, in.height, GL_RGBA, GL_UNSIGNED_BYTE, upside_down.rgba.data());
  Picture picture = upside_down;
  for (int y = 0; y < in.height; ++y) {
    const auto from = static_cast<std::size_t>(in.height - 1 - y) * row;
    std::memcpy(&picture.rgba[static_cast<std::size_t>(y) * row], &upside_down.rgba[from], row);
  }
  return picture;
}

Result<void> write_png(const Picture& picture, const std::filesystem::path& to) {
  cairo_surface_t* surface =
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height);
  unsigned char* data = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  cairo_surface_flush(surface);
  for (int y = 0; y < picture.height && data != nullptr; ++y) {
    for (int x = 0; x < picture.width; ++x) {
      const auto from = (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                         static_cast<std::size_t>(x)) *
                        4;
      const std::uint32_t pixel = static_cast<std::uint32_t>(picture.rgba[from]) << 16U |
                                  static_cast<std::uint32_t>(picture.rgba[from + 1]) << 8U |
                                  picture.rgba[from + 2];
      std::memcpy(data + static_cast<std::ptrdiff_t>(y) * stride + 4L * x, &pixel, 4);
    }
  }
  cairo_surface_mark_dirty(surface);
  const auto wrong =
      put_whole(to, [&](const std::filesystem::path& beside) -> std::optional<std::string> {
        const cairo_status_t status = cairo_surface_write_to_png(surface, beside.c_str());
        if (status == CAIRO_STATUS_SUCCESS) return std::nullopt;
        return cairo_status_to_string(status);
      });
  cairo_surface_destroy(surface);
  if (!wrong) return {};
  return fail(Error::Kind::input, to.string(), *wrong,
              said("Choose a folder that can be written to"));
}

}  // namespace rb::app
