// Plain files beside the database (the mirror, the note of the head, the key of the device). Opened
// with care for what is not ours: no link is followed, nothing is overwritten, cut or removed. A
// seam, so that a test can cut the power between any two of these steps.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <system_error>
#include <tl/expected.hpp>

namespace rb::store {

template <class T>
using Done = tl::expected<T, std::error_code>;

class PlainFile {
 public:
  PlainFile() = default;
  PlainFile(const PlainFile&) = delete;
  PlainFile& operator=(const PlainFile&) = delete;
  virtual ~PlainFile() = default;
  /// Fewer bytes than asked for only at the end of the file.
  virtual Done<std::string> read(std::uint64_t from, std::size_t size) = 0;
  /// All of the bytes; after an error any part of them may stand there.
  virtual Done<void> write(std::uint64_t at, std::string_view bytes) = 0;
  /// What was written is on the disk when this returns.
  virtual Done<void> sync() = 0;
  virtual Done<std::uint64_t> size() = 0;
  /// The name it was opened by still leads to it.
  virtual bool in_place() = 0;
};

class PlainDisk {
 public:
  PlainDisk() = default;
  PlainDisk(const PlainDisk&) = delete;
  PlainDisk& operator=(const PlainDisk&) = delete;
  virtual ~PlainDisk() = default;
  /// A new file, private to the user; std::errc::file_exists where anything stands.
  virtual Done<std::unique_ptr<PlainFile>> make(const std::filesystem::path& path) = 0;
  /// A file that stands: a regular one, no symbolic link, known by this one name only; else an
  /// error for which not_ours() holds. What is read from it is what the disk has, as far as the
  /// system can be asked for that: not what a failed write left in memory.
  virtual Done<std::unique_ptr<PlainFile>> open(const std::filesystem::path& path) = 0;
  /// The same, to be read only.
  virtual Done<std::unique_ptr<PlainFile>> open_to_read(const std::filesystem::path& path) = 0;
  /// Gives a file another name in its folder; std::errc::file_exists where anything has it.
  virtual Done<void> rename(const std::filesystem::path& from, const std::filesystem::path& to) = 0;
  /// The names in a folder are on the disk when this returns.
  virtual Done<void> sync_folder(const std::filesystem::path& folder) = 0;
};

/// What stands by that name is a link, a folder or the like: nothing that this program made.
bool not_ours(const std::error_code& error);

/// The system's own.
PlainDisk& plain_disk();

/// All of a file; at most `most` bytes (std::errc::file_too_large beyond).
Done<std::string> read_all(PlainFile& file, std::uint64_t most);

}  // namespace rb::store
