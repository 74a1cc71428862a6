#include "store/salvage/page_images.h"

#include <algorithm>
#include <array>
#include <bit>
#include <string_view>

namespace rb::store {

namespace {

constexpr std::size_t kLogHeader = 32, kFrameHeader = 24;
constexpr std::uint32_t kLogMagic = 0x377f0682;  // its last bit: checksums over big-endian words

bool is_page_size(std::size_t size) {
  return size >= 512 && size <= 65536 && std::has_single_bit(size);
}

/// The log's running checksum (section 4.2).
struct Checksum {
  bool big_endian = false;
  std::uint32_t s0 = 0, s1 = 0;

  void add(Bytes bytes) {
    for (std::size_t at = 0; at + 8 <= bytes.size(); at += 8) {
      s0 += word(bytes, at) + s1;
      s1 += word(bytes, at + 4) + s0;
    }
  }
  [[nodiscard]] bool is(Bytes bytes, std::size_t at) const {
    return big_endian_32(bytes, at) == s0 && big_endian_32(bytes, at + 4) == s1;
  }

 private:
  [[nodiscard]] std::uint32_t word(Bytes bytes, std::size_t at) const {
    const auto number = big_endian_32(bytes, at);
    if (big_endian) return number;
    return number >> 24U | (number >> 8U & 0xff00U) | (number << 8U & 0xff0000U) | number << 24U;
  }
};

/// How many frames SQLite would read: those up to the last commit before anything that does not
/// fit.
std::size_t current_frames(Bytes log, std::size_t page_size) {
  if (log.size() < kLogHeader) return 0;
  const auto magic = big_endian_32(log, 0);
  if ((magic & ~1U) != kLogMagic || big_endian_32(log, 8) != page_size) return 0;
  Checksum sum{.big_endian = (magic & 1U) != 0};
  sum.add(log.first(24));
  if (!sum.is(log, 24)) return 0;
  std::size_t committed = 0, frame = 0;
  for (std::size_t at = kLogHeader; at + kFrameHeader + page_size <= log.size();
       at += kFrameHeader + page_size) {
    const auto head = log.subspan(at, kFrameHeader);
    if (!std::equal(head.begin() + 8, head.begin() + 16, log.begin() + 16)) break;  // the salts
    sum.add(head.first(8));
    sum.add(log.subspan(at + kFrameHeader, page_size));
    if (!sum.is(head, 16)) break;
    ++frame;
    if (big_endian_32(head, 4) != 0) committed = frame;
  }
  return committed;
}

}  // namespace

std::uint32_t big_endian_32(Bytes bytes, std::size_t at) {
  if (at > bytes.size() || bytes.size() - at < 4) return 0;
  std::uint32_t number = 0;
  for (std::size_t i = 0; i < 4; ++i) number = number << 8U | bytes[at + i];
  return number;
}

PageLayout page_layout(Bytes file, Bytes log) {
  constexpr std::string_view kBegins = "SQLite format 3";
  PageLayout layout;
  if (file.size() >= 100 && std::equal(kBegins.begin(), kBegins.end(), file.begin())) {
    const std::size_t size = static_cast<std::size_t>(file[16]) << 8U | file[17];
    const std::size_t page_size = size == 1 ? 65536 : size;
    if (is_page_size(page_size) && file[20] <= page_size - 480) {
      return {page_size, file[20], true};
    }
  }
  if (log.size() >= kLogHeader && (big_endian_32(log, 0) & ~1U) == kLogMagic) {
    const std::size_t page_size = big_endian_32(log, 8);
    if (is_page_size(page_size)) return {page_size, 0, true};
  }
  return layout;
}

PageImages::PageImages(Bytes file, Bytes log, std::size_t page_size, std::size_t reserved)
    : usable_(page_size - reserved) {
  const auto add = [&](std::uint32_t number, Bytes bytes, bool current) {
    by_number_[number].push_back(images_.size());
    images_.push_back({number, bytes, current});
  };
  std::uint32_t number = 0;
  for (std::size_t at = 0; at < file.size(); at += page_size) {
    add(++number, file.subspan(at, std::min(page_size, file.size() - at)), true);
  }
  const auto current = current_frames(log, page_size);
  std::size_t frame = 0;
  for (std::size_t at = kLogHeader; at + kFrameHeader < log.size();
       at += kFrameHeader + page_size) {
    const auto from = at + kFrameHeader;
    add(big_endian_32(log, at), log.subspan(from, std::min(page_size, log.size() - from)),
        ++frame <= current);
  }
}

std::vector<const PageImage*> PageImages::of(std::uint32_t number) const {
  std::vector<const PageImage*> found;
  const auto at = by_number_.find(number);
  if (at == by_number_.end()) return found;
  constexpr std::size_t kMost = 8;
  for (auto index = at->second.rbegin(); index != at->second.rend(); ++index) {
    const auto& image = images_[*index];
    const bool again = std::any_of(found.begin(), found.end(), [&](const PageImage* other) {
      return std::equal(other->bytes.begin(), other->bytes.end(), image.bytes.begin(),
                        image.bytes.end());
    });
    if (!again) found.push_back(&image);
    if (found.size() == kMost) break;
  }
  return found;
}

}  // namespace rb::store
