// Where a file stands.
#pragma once

#include <filesystem>

namespace rb {

using Path = std::filesystem::path;

}  // namespace rb
