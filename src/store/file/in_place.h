// Whether the file that is open is still the one its path leads to.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <optional>

namespace rb::store {

/// Which file it is, whatever its name.
struct FileMark {
  dev_t device{};
  ino_t number{};
  bool operator==(const FileMark&) const = default;
};

/// The file a path leads to; none when there is none or it does not answer.
std::optional<FileMark> mark_of(const std::filesystem::path& path);

}  // namespace rb::store
