// What the screens say of photos: the newest in the folder that the tablet's camera program fills,
// and how the one that was chosen stands.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/saying.h"

namespace rb::screens {

/// A JPEG or PNG by its name; what is in it was not looked at.
struct PhotoFile {
  std::string path{}, name{};
  std::int64_t bytes = 0;
  Moment made{};
  bool operator==(const PhotoFile&) const = default;
};

struct PhotosSeen {
  enum class State { none, taking, taken, failed };
  std::string folder{};
  bool looked = false;             ///< the folder was looked at; until then `files` tells nothing
  std::vector<PhotoFile> files{};  ///< the newest first
  State state = State::none;       ///< of the photo chosen last
  std::string name{};              ///< its
  std::string says{};              ///< why it failed
  bool operator==(const PhotosSeen&) const = default;
};

}  // namespace rb::screens
