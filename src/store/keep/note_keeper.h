// Keeps the note of the head beside a book up to date on a thread of its own, at each event the
// book acknowledged.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>

#include "base/result.h"
#include "store/file/plain_disk.h"

namespace rb::store {

class NoteKeeper {
 public:
  /// `disk` none: the system's own. `changed` is called on its thread when a trouble begins or
  /// ends.
  explicit NoteKeeper(std::filesystem::path book, std::shared_ptr<PlainDisk> disk = nullptr,
                      std::function<void()> changed = {});
  NoteKeeper(const NoteKeeper&) = delete;
  NoteKeeper& operator=(const NoteKeeper&) = delete;
  ~NoteKeeper();

  /// The book acknowledged something. Any thread; returns at once.
  void note_kept();

  struct Status {
    std::optional<std::int64_t> noted;  ///< on its disk; none: not yet
    std::optional<Error> trouble;
  };
  [[nodiscard]] Status status() const;

 private:
  struct Inside;
  std::shared_ptr<Inside> inside_;
  std::unique_ptr<class SideThread> thread_;
};

}  // namespace rb::store
