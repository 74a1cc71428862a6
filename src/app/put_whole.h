// A file that is there whole or not at all: written beside its place, synced, then put there.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "base/unfinished.h"

namespace rb {

/// `write` fills the file it is given, by its name, and says what went wrong, if anything did. What
/// went wrong with all of it; nothing is left beside.
std::optional<std::string> put_whole(
    const std::filesystem::path& to,
    const std::function<std::optional<std::string>(const std::filesystem::path&)>& write,
    Place place = Place::replaced);

/// The same for a text.
std::optional<std::string> put_whole(const std::filesystem::path& to, const std::string& text,
                                     Place place = Place::replaced);

}  // namespace rb
