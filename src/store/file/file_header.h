// The first bytes of a SQLite file, read without a trace.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace rb::store {

struct FileHeader {
  int application_id = 0;
  int user_version = 0;
  int write_version = 0;  ///< above 2: not to be written by this SQLite
};

/// Reads them past everything else SQLite does on opening (locks, recovery, judging pages that a
/// checkpoint may have left half brought in), yet through its file layer: a handle of our own on
/// the file, once closed, would drop the locks SQLite holds for this process. None when the file
/// does not begin as a SQLite database. Throws SQLite::Exception when it cannot be read.
std::optional<FileHeader> read_header(const std::filesystem::path& path);

/// In a plain sentence, what in them forbids writing; none: nothing does. Throws as read_header().
std::optional<std::string> header_fault(const std::filesystem::path& path);

}  // namespace rb::store
