// The pages of a book's file and of the log beside it, as bytes: nothing is asked of SQLite, so
// that a broken page hides no other. Layout: https://www.sqlite.org/fileformat.html, sections 1.3
// (the file's header), 1.6 (overflow pages) and 4 (the log).
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

namespace rb::store {

using Bytes = std::span<const unsigned char>;

/// One page as the file has it, or as one frame of the log has it.
struct PageImage {
  std::uint32_t number = 0;  ///< from 1
  Bytes bytes;               ///< shorter than a page where the file was cut off
  bool current = false;      ///< in the file, or in the log as far as SQLite itself would read it
};

class PageImages {
 public:
  /// `page_size`: a power of two from 512 to 65536. The bytes must outlive this.
  PageImages(Bytes file, Bytes log, std::size_t page_size, std::size_t reserved);

  /// The file's in order, then the log's in order.
  [[nodiscard]] const std::vector<PageImage>& all() const { return images_; }
  /// The different images of one page, the newest first.
  [[nodiscard]] std::vector<const PageImage*> of(std::uint32_t number) const;
  [[nodiscard]] std::size_t usable() const { return usable_; }  ///< bytes of a page SQLite uses

 private:
  std::size_t usable_;
  std::vector<PageImage> images_;
  std::unordered_map<std::uint32_t, std::vector<std::size_t>> by_number_;
};

/// What the headers of file and log say of the size of a page and of the bytes reserved at its end.
struct PageLayout {
  std::size_t page_size = 4096;
  std::size_t reserved = 0;
  bool told = false;  ///< a header said so; else it is a guess
};
PageLayout page_layout(Bytes file, Bytes log);

/// The number big-endian bytes make; 0 where they lie beyond the end.
std::uint32_t big_endian_32(Bytes bytes, std::size_t at);

}  // namespace rb::store
