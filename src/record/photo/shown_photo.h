// A photo made ready for the record's pages: upright, no larger than a page shows, on white, always
// a JPEG of three colours. What it is made of is never changed.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rb {

struct ShownPhoto {
  std::string jpeg;
  int wide = 0, tall = 0;  ///< pixels
};

/// Of a JPEG's or a PNG's bytes. Nothing where it cannot be drawn: damaged inside, in four inks, or
/// of more than 100 million pixels.
std::optional<ShownPhoto> shown_photo(std::string_view bytes);

/// How a camera was held (Exif tag 0x0112, from memory): 1 to 8, and 1 where a JPEG does not say.
int photo_turn(std::string_view jpeg);

}  // namespace rb
