// A file that is there whole or not at all: written beside its place, then put there.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace rb {

/// `write` makes the file it is given and says what went wrong, if anything did. What went wrong
/// with all of it; nothing is left beside.
std::optional<std::string> put_whole(
    const std::filesystem::path& to,
    const std::function<std::optional<std::string>(const std::filesystem::path&)>& write);

/// The same for a text.
std::optional<std::string> put_whole(const std::filesystem::path& to, const std::string& text);

}  // namespace rb
