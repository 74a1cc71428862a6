// The folder that the tablet's camera program fills, and its newest photos.
#pragma once

#include <vector>

#include "base/path.h"
#include "screens/seen/photos_seen.h"

namespace rb {

/// As the settings file says ("camera_folder", a whole path); else the user's pictures folder by
/// XDG user-dirs; else ~/Pictures. Empty: this user has no home.
Path camera_folder(const Path& settings);

/// The newest files in it and one folder below whose names end as a JPEG's or a PNG's do, the
/// newest first, at most so many. Hidden ones are passed over.
std::vector<screens::PhotoFile> newest_photos(const Path& folder, std::size_t most);

}  // namespace rb
