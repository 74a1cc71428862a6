// JPEG to pixels and back. Inside this room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rb {

/// Of a picture more is not read: what it takes to hold it.
inline constexpr double kMostPixels = 100e6;

/// As cairo's RGB24 wants them: four bytes each, rows without a gap.
struct Pixels {
  int wide = 0, tall = 0;
  std::vector<unsigned char> bytes;
};

/// Read already smaller where its longer side stays at least `long_side`. False: it cannot be read.
bool read_jpeg(std::string_view bytes, int long_side, Pixels& into);

/// The same pixels give the same bytes. Empty: no memory.
std::string write_jpeg(const unsigned char* pixels, int wide, int tall, int stride);

}  // namespace rb
