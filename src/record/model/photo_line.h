// A photo as the record tells of it.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "base/moment.h"
#include "base/quantity.h"
#include "record/photo/shown_photo.h"

namespace rb {

/// How the file stands that a photo's event names.
enum class PhotoStanding { not_looked, whole, missing, altered };

struct PhotoFile {
  PhotoStanding standing = PhotoStanding::not_looked;
  std::string bytes{};  ///< of a whole one
};
/// A photo's file, asked for by its SHA-256 in hexadecimal: the record knows no store.
using PhotoSource = std::function<PhotoFile(const std::string& sha256)>;

struct PhotoLine {
  Moment at{};
  std::optional<int> blemish{};  ///< its number
  std::string of{};              ///< the blemish, in words; empty: of the element
  std::string repair{};          ///< what was done, where it is of a repair
  std::string element{}, side{};
  std::optional<Length> x{}, z{};
  std::string name{}, sha256{}, by{};
  int bytes = 0;
  PhotoStanding standing = PhotoStanding::not_looked;
  std::optional<ShownPhoto> picture{};  ///< of a whole one that can be drawn
};

/// How its file stands: "whole", "missing", "altered", ... in English, a key of the catalogues.
const char* to_text(const PhotoLine& photo);

}  // namespace rb
