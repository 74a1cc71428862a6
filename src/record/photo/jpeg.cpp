#include "record/photo/jpeg.h"

#include <algorithm>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>

// Wants the size of FILE before it.
#include <jpeglib.h>

namespace rb {

namespace {

constexpr int kQuality = 82;
constexpr int kEighths = 8;  // it reads a picture at so many eighths of its size

// The library gives up by calling a function that must not return: back to where it was called.
struct Trap {
  jpeg_error_mgr base{};
  std::jmp_buf back{};
};

[[noreturn]] void give_up(j_common_ptr info) {
  std::longjmp(reinterpret_cast<Trap*>(info->err)->back, 1);  // NOLINT(cert-err52-cpp)
}
void say_nothing(j_common_ptr /*info*/) {}

jpeg_error_mgr* set(Trap& trap) {
  jpeg_std_error(&trap.base);
  trap.base.error_exit = give_up;
  trap.base.output_message = say_nothing;
  return &trap.base;
}

class Reader {
 public:
  Reader() {
    info_.err = set(trap_);
    jpeg_create_decompress(&info_);
  }
  ~Reader() { jpeg_destroy_decompress(&info_); }
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  // Nothing here that a jump would have to clear away: what is made stands in the caller's hands.
  bool begin(std::string_view bytes, int long_side) {
    if (setjmp(trap_.back) != 0) return false;  // NOLINT(cert-err52-cpp)
    jpeg_mem_src(&info_, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    if (jpeg_read_header(&info_, TRUE) != JPEG_HEADER_OK) return false;
    if (static_cast<double>(info_.image_width) * info_.image_height > kMostPixels) return false;
    if (info_.num_components != 1 && info_.num_components != 3) return false;
    const auto longer = static_cast<int>(std::max(info_.image_width, info_.image_height));
    info_.scale_denom = kEighths;
    info_.scale_num = 1;
    while (info_.scale_num < kEighths &&
           longer * static_cast<int>(info_.scale_num) < long_side * kEighths) {
      ++info_.scale_num;
    }
    info_.out_color_space = JCS_EXT_BGRX;
    return jpeg_start_decompress(&info_) != FALSE;
  }
  bool rows(unsigned char* into) {
    if (setjmp(trap_.back) != 0) return false;  // NOLINT(cert-err52-cpp)
    while (info_.output_scanline < info_.output_height) {
      JSAMPROW row = into + std::size_t{info_.output_scanline} * info_.output_width * 4;
      jpeg_read_scanlines(&info_, &row, 1);
    }
    return true;
  }
  [[nodiscard]] int wide() const { return static_cast<int>(info_.output_width); }
  [[nodiscard]] int tall() const { return static_cast<int>(info_.output_height); }

 private:
  Trap trap_;
  jpeg_decompress_struct info_{};
};

class Writer {
 public:
  Writer() {
    info_.err = set(trap_);
    jpeg_create_compress(&info_);
  }
  ~Writer() {
    jpeg_destroy_compress(&info_);
    std::free(bytes_);
  }
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;

  bool write(const unsigned char* pixels, int wide, int tall, int stride) {
    if (setjmp(trap_.back) != 0) return false;  // NOLINT(cert-err52-cpp)
    jpeg_mem_dest(&info_, &bytes_, &size_);
    info_.image_width = static_cast<JDIMENSION>(wide);
    info_.image_height = static_cast<JDIMENSION>(tall);
    info_.input_components = 4;
    info_.in_color_space = JCS_EXT_BGRX;
    jpeg_set_defaults(&info_);
    jpeg_set_quality(&info_, kQuality, TRUE);
    jpeg_start_compress(&info_, TRUE);
    while (info_.next_scanline < info_.image_height) {
      // The library reads them only, though it does not say so.
      JSAMPROW row = const_cast<unsigned char*>(pixels) +
                     std::size_t{info_.next_scanline} * static_cast<std::size_t>(stride);
      jpeg_write_scanlines(&info_, &row, 1);
    }
    jpeg_finish_compress(&info_);
    return true;
  }
  [[nodiscard]] std::string bytes() const {
    return {reinterpret_cast<const char*>(bytes_), static_cast<std::size_t>(size_)};
  }

 private:
  Trap trap_;
  jpeg_compress_struct info_{};
  unsigned char* bytes_ = nullptr;
  unsigned long size_ = 0;
};

}  // namespace

bool read_jpeg(std::string_view bytes, int long_side, Pixels& into) {
  Reader reader;
  if (!reader.begin(bytes, long_side)) return false;
  into.wide = reader.wide();
  into.tall = reader.tall();
  into.bytes.resize(static_cast<std::size_t>(into.wide) * static_cast<std::size_t>(into.tall) * 4);
  return reader.rows(into.bytes.data());
}

std::string write_jpeg(const unsigned char* pixels, int wide, int tall, int stride) {
  Writer writer;
  return writer.write(pixels, wide, tall, stride) ? writer.bytes() : std::string{};
}

}  // namespace rb
