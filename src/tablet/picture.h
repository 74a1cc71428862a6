// A frame of the screens as a picture, drawn without a window or a display.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <vector>

#include "base/result.h"
#include "screens/book/ui.h"

namespace rb::app {

struct Picture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgba;  ///< from the top left, 4 bytes a pixel
};

/// Draws frames off the screen, by the system's software or hardware OpenGL through EGL.
class OffscreenPainter {
 public:
  /// An error (kind book) in plain words when the system has no OpenGL to draw with.
  static Result<std::unique_ptr<OffscreenPainter>> make(int width, int height);
  ~OffscreenPainter();
  OffscreenPainter(const OffscreenPainter&) = delete;
  OffscreenPainter& operator=(const OffscreenPainter&) = delete;

  /// What the last frame of `ui` drew.
  Picture paint(screens::Ui& ui);

 private:
  OffscreenPainter() = default;
  struct Inside;
  std::unique_ptr<Inside> in_;
};

Result<void> write_png(const Picture& picture, const std::filesystem::path& to);

}  // namespace rb::app
