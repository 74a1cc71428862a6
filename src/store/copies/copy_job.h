// A copy made beside the drawing: begun by a tap, looked at each frame.
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "store/copies/copy_book.h"
#include "store/file/side_thread.h"

namespace rb::store {

class CopyJob {
 public:
  /// `wake` is called on the copy's thread whenever there is more to show.
  CopyJob(std::filesystem::path book, std::filesystem::path folder, std::function<void()> wake);
  CopyJob(const CopyJob&) = delete;
  CopyJob& operator=(const CopyJob&) = delete;
  /// Stops the copy if it is still under way; nothing is left of it then.
  ~CopyJob();

  struct Status {
    double done = 0;  ///< 0 to 1
    std::optional<Result<CopyReport>> end;
  };
  [[nodiscard]] Status status() const;

 private:
  struct Inside;
  std::shared_ptr<Inside> inside_;
  std::unique_ptr<SideThread> thread_;
};

}  // namespace rb::store
