// A database in the making: under a name of our own until it is whole, then put in its place, where
// nothing may stand. Goes with this object unless it was put in place.
#pragma once

#include <filesystem>

#include "base/result.h"

namespace rb::store {

/// An error of kind book unless the place is free: nothing by that name, and nothing beside it that
/// another book left.
Result<void> nothing_stands(const std::filesystem::path& to);

class Unfinished {
 public:
  /// Takes "<to>.<random>.unfinished" exclusively, an empty file private to the user.
  static Result<Unfinished> begin(const std::filesystem::path& to);
  Unfinished(Unfinished&& other) noexcept;
  Unfinished& operator=(Unfinished&&) = delete;
  ~Unfinished();

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  /// Its bytes and its name are on the disk when this returns. No SQLite handle may be open on it.
  Result<void> put_in_place();

 private:
  Unfinished(std::filesystem::path to, std::filesystem::path path)
      : to_(std::move(to)), path_(std::move(path)) {}
  std::filesystem::path to_, path_;
};

}  // namespace rb::store
