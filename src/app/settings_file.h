// The screens' settings between starts, as a small JSON file in the user's configuration folder.
#pragma once

#include <filesystem>

#include "base/result.h"
#include "screens/view/settings.h"

namespace rb {

/// XDG folders: $XDG_DATA_HOME/risebook/pours.risebook, $XDG_CONFIG_HOME/risebook/screens.json; the
/// user's home is $HOME or, unset, what the system's list of users says. An error (kind input) when
/// there is none; then no settings are kept (an empty path).
Result<std::filesystem::path> default_book();
std::filesystem::path settings_path();

/// What stands there; the defaults where nothing readable does.
screens::Settings read_settings(const std::filesystem::path& path);
/// A folder named there by a whole path; empty where none is.
std::filesystem::path folder_set(const std::filesystem::path& settings, const char* field);
/// That the tablet's camera program fills.
inline constexpr const char* kCameraFolder = "camera_folder";
/// Where every tap goes as it is kept ("mirror_folder", an absolute path); empty where none is
/// named.
std::filesystem::path mirror_folder(const std::filesystem::path& settings);
/// Names it from now on; empty: none. The rest of the file stays.
void keep_mirror_folder(const std::filesystem::path& settings, const std::filesystem::path& folder);
/// Best effort: a settings file that cannot be written loses no pour. Folders named in it stay.
void write_settings(const std::filesystem::path& path, const screens::Settings& settings);

}  // namespace rb
