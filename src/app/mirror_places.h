// Folders that a mirror could be kept in: sticks, cards and shared folders where the system puts
// them.
#pragma once

#include <vector>

#include "base/path.h"
#include "screens/seen/second_copy.h"

namespace rb {

/// Where the system puts what is plugged in or shared: /media/USER, /run/media/USER, /mnt.
std::vector<Path> places_roots();

/// The folders in `roots` that may be written to, in order of name; each says whether it is on the
/// disk of `book`. May wait for a disk.
std::vector<screens::MirrorPlace> mirror_places(const std::vector<Path>& roots, const Path& book);

}  // namespace rb
