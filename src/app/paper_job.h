// Something for paper written to a folder on a thread of its own: a disk that hangs must not hold
// the drawing.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "base/path.h"
#include "screens/seen/second_copy.h"
#include "screens/view/intents.h"
#include "store/file/side_thread.h"

namespace rb {

/// Writes "run-sheet-W1-2026-03-02.pdf" into the first of the folders that takes it, under a name
/// that is free. The whole path; input error: none of the folders takes it.
Result<Path> write_run_sheet(const screens::WriteSheet& wish, const std::vector<Path>& folders);

class PaperJob {
 public:
  /// Gives the whole path of what was written.
  using Write = std::function<Result<std::string>()>;
  /// `changed` is called when it has ended, on another thread; what failed is told in this voice.
  PaperJob(Write write, Voice voice, std::function<void()> changed);
  [[nodiscard]] screens::CopySeen seen() const;

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
  std::unique_ptr<store::SideThread> thread_;
};

}  // namespace rb
