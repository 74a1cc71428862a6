#include "store/unfinished.h"

#include <fmt/format.h>

#include <system_error>
#include <utility>

#include "store/identity.h"
#include "store/plain_disk.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

Failed trouble(const fs::path& path, const std::error_code& code) {
  if (code == std::errc::file_exists) {
    return fail(Error::Kind::book, path.string(), "there is already a file here",
                "Give another name");
  }
  return fail(Error::Kind::book, path.string(), "cannot be written: " + code.message(),
              code == std::errc::no_space_on_device ? "Free some space and try again"
                                                    : "Check the folder and its disk");
}

}  // namespace

Result<void> nothing_stands(const fs::path& to) {
  if (fs::exists(fs::symlink_status(to))) {
    return fail(Error::Kind::book, to.string(), "there is already a file here",
                "Give the new book another name");
  }
  for (const char* beside : {"-wal", "-shm", "-journal", ".head"}) {
    const fs::path left = to.string() + beside;
    if (fs::exists(fs::symlink_status(left))) {
      return fail(Error::Kind::book, left.string(),
                  "this file is left from another book and may hold events of it",
                  "Put it back beside its book, or give the new book another name");
    }
  }
  return {};
}

Result<Unfinished> Unfinished::begin(const fs::path& to) {
  const fs::path path = fmt::format("{}.{}.unfinished", to.string(), random_tag());
  const auto file = plain_disk().make(path);
  if (!file) return trouble(path, file.error());
  return Unfinished(to, path);
}

Unfinished::Unfinished(Unfinished&& other) noexcept
    : to_(std::move(other.to_)), path_(std::exchange(other.path_, fs::path{})) {}

Unfinished::~Unfinished() {
  if (path_.empty()) return;
  std::error_code ignored;
  for (const char* part : {"", "-wal", "-shm", "-journal"}) {
    fs::remove(path_.string() + part, ignored);
  }
}

Result<void> Unfinished::put_in_place() {
  auto& disk = plain_disk();
  {
    const auto file = disk.open(path_);
    if (!file) return trouble(path_, file.error());
    if (const auto done = (*file)->sync(); !done) return trouble(path_, done.error());
  }
  if (const auto done = disk.rename(path_, to_); !done) return trouble(to_, done.error());
  path_.clear();
  if (const auto done = disk.sync_folder(to_.parent_path()); !done) {
    return trouble(to_, done.error());
  }
  return {};
}

}  // namespace rb::store
