#include "record/photo/shown_photo.h"

#include <cairo.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <memory>

#include "record/photo/jpeg.h"

namespace rb {

namespace {

using Picture = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Brush = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

constexpr int kLongSide = 1280;  // 90 mm on paper at 360 a inch

unsigned byte_at(std::string_view bytes, std::size_t at) {
  return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0U;
}

// A number of Exif's, whichever end it begins at.
unsigned number_at(std::string_view bytes, std::size_t at, std::size_t size, bool small_end) {
  unsigned number = 0;
  for (std::size_t i = 0; i < size; ++i) {
    number = number * 256 + byte_at(bytes, small_end ? at + size - 1 - i : at + i);
  }
  return number;
}

int turn_in(std::string_view exif) {
  constexpr std::size_t kEntry = 12;
  constexpr unsigned kTurn = 0x0112;
  const bool small_end = exif.starts_with("II");
  if (!small_end && !exif.starts_with("MM")) return 1;
  const std::size_t list = number_at(exif, 4, 4, small_end);
  const unsigned entries = number_at(exif, list, 2, small_end);
  for (std::size_t i = 0; i < entries; ++i) {
    const std::size_t entry = list + 2 + i * kEntry;
    if (entry + kEntry > exif.size()) return 1;
    if (number_at(exif, entry, 2, small_end) != kTurn) continue;
    const unsigned turn = number_at(exif, entry + 8, 2, small_end);
    return turn >= 1 && turn <= 8 ? static_cast<int>(turn) : 1;
  }
  return 1;
}

struct Rest {
  std::string_view bytes;
};
cairo_status_t next_bytes(void* rest, unsigned char* into, unsigned int length) {
  std::string_view& bytes = static_cast<Rest*>(rest)->bytes;
  if (bytes.size() < length) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(into, bytes.data(), length);
  bytes.remove_prefix(length);
  return CAIRO_STATUS_SUCCESS;
}

// Its size stands in its header (ISO/IEC 15948, 11.2.2).
Picture png_picture(std::string_view bytes) {
  constexpr std::size_t kWide = 16, kTall = 20;
  Picture none{nullptr, &cairo_surface_destroy};
  const double wide = number_at(bytes, kWide, 4, false);
  const double tall = number_at(bytes, kTall, 4, false);
  if (wide * tall < 1 || wide * tall > kMostPixels) return none;
  Rest rest{bytes};
  Picture read{cairo_image_surface_create_from_png_stream(next_bytes, &rest),
               &cairo_surface_destroy};
  return cairo_surface_status(read.get()) == CAIRO_STATUS_SUCCESS ? std::move(read)
                                                                  : std::move(none);
}

// Where a point of the picture as it was taken comes to stand, `w` and `h` being its size.
cairo_matrix_t upright(int turn, double w, double h) {
  const std::array<cairo_matrix_t, 8> kTurns{{{1, 0, 0, 1, 0, 0},
                                              {-1, 0, 0, 1, w, 0},
                                              {-1, 0, 0, -1, w, h},
                                              {1, 0, 0, -1, 0, h},
                                              {0, 1, 1, 0, 0, 0},
                                              {0, 1, -1, 0, h, 0},
                                              {0, -1, -1, 0, h, w},
                                              {0, -1, 1, 0, 0, w}}};
  return kTurns.at(static_cast<std::size_t>(turn - 1));
}

std::optional<ShownPhoto> drawn(cairo_surface_t* taken, int turn) {
  const double w = cairo_image_surface_get_width(taken);
  const double h = cairo_image_surface_get_height(taken);
  if (w < 1 || h < 1) return std::nullopt;
  const bool lying = turn > 4;
  const double scale = std::min(1.0, kLongSide / std::max(w, h));
  const auto side = [&](double pixels) {
    return std::max(1, static_cast<int>(std::lround(pixels * scale)));
  };
  ShownPhoto shown{{}, side(lying ? h : w), side(lying ? w : h)};
  const Picture page{cairo_image_surface_create(CAIRO_FORMAT_RGB24, shown.wide, shown.tall),
                     &cairo_surface_destroy};
  {
    const Brush brush{cairo_create(page.get()), &cairo_destroy};
    cairo_set_source_rgb(brush.get(), 1, 1, 1);
    cairo_paint(brush.get());
    cairo_scale(brush.get(), shown.wide / (lying ? h : w), shown.tall / (lying ? w : h));
    const cairo_matrix_t stands = upright(turn, w, h);
    cairo_transform(brush.get(), &stands);
    cairo_set_source_surface(brush.get(), taken, 0, 0);
    cairo_pattern_set_extend(cairo_get_source(brush.get()), CAIRO_EXTEND_PAD);
    cairo_paint(brush.get());
    if (cairo_status(brush.get()) != CAIRO_STATUS_SUCCESS) return std::nullopt;
  }
  cairo_surface_flush(page.get());
  const unsigned char* pixels = cairo_image_surface_get_data(page.get());
  if (pixels == nullptr) return std::nullopt;
  shown.jpeg =
      write_jpeg(pixels, shown.wide, shown.tall, cairo_image_surface_get_stride(page.get()));
  if (shown.jpeg.empty()) return std::nullopt;
  return shown;
}

}  // namespace

int photo_turn(std::string_view jpeg) {
  using namespace std::string_view_literals;
  constexpr std::string_view kExif = "Exif\0\0"sv;
  constexpr unsigned kMarker = 0xFF, kFirst = 0xE0, kSecond = 0xE1, kLast = 0xEF, kOther = 0xFE;
  std::size_t at = 2;
  while (byte_at(jpeg, at) == kMarker) {
    const unsigned kind = byte_at(jpeg, at + 1);
    const std::size_t size = number_at(jpeg, at + 2, 2, false);
    const bool of_programs = (kind >= kFirst && kind <= kLast) || kind == kOther;
    if (!of_programs || size < 2 || at + 2 + size > jpeg.size()) return 1;
    const std::string_view inside = jpeg.substr(at + 4, size - 2);
    if (kind == kSecond && inside.starts_with(kExif)) return turn_in(inside.substr(kExif.size()));
    at += 2 + size;
  }
  return 1;
}

std::optional<ShownPhoto> shown_photo(std::string_view bytes) {
  if (bytes.starts_with("\x89PNG")) {
    const Picture read = png_picture(bytes);
    return read ? drawn(read.get(), 1) : std::nullopt;
  }
  Pixels pixels;
  if (!read_jpeg(bytes, kLongSide, pixels)) return std::nullopt;
  const Picture taken{
      cairo_image_surface_create_for_data(pixels.bytes.data(), CAIRO_FORMAT_RGB24, pixels.wide,
                                          pixels.tall, pixels.wide * 4),
      &cairo_surface_destroy};
  return drawn(taken.get(), photo_turn(bytes));
}

}  // namespace rb
