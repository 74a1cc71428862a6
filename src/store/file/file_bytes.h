// A whole file of SQLite's as bytes.
#pragma once

#include <filesystem>
#include <vector>

namespace rb::store {

/// Read through SQLite's own file layer, since a handle of our own, once closed, would drop the
/// locks SQLite holds for this process. Empty where no file stands. Throws SQLite::Exception when
/// it cannot be read.
std::vector<unsigned char> file_bytes(const std::filesystem::path& path);

/// The log beside a book.
std::filesystem::path log_of(const std::filesystem::path& path);

}  // namespace rb::store
