// Which book was open last, remembered beside the settings: a new, empty one in its place is said.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

#include "screens/book/ui.h"

namespace rb {

struct LastBook {
  std::filesystem::path path{};
  std::string uuid{};
  std::int64_t events = 0;
  bool operator==(const LastBook&) const = default;
};

/// $XDG_CONFIG_HOME/risebook/last-book.json
std::filesystem::path last_book_path();

/// What stands there; an empty one where nothing readable does.
LastBook read_last_book(const std::filesystem::path& file);
/// Best effort.
void write_last_book(const std::filesystem::path& file, const LastBook& book);

/// What to tell of when another book stands where one with events was.
std::optional<screens::Trouble> missed_book(const LastBook& before, const LastBook& now);

}  // namespace rb
