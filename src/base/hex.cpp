#include "base/hex.h"

#include <algorithm>

namespace rb {

namespace {

constexpr std::string_view kHexDigits = "0123456789abcdef";

}  // namespace

bool is_hex(std::string_view text) {
  return text.size() % 2 == 0 && text.find_first_not_of(kHexDigits) == std::string_view::npos;
}

Hex hex_of(std::span<const unsigned char> bytes) {
  Hex hex;
  hex.digits.reserve(2 * bytes.size());
  for (const unsigned byte : bytes) {
    hex.digits += kHexDigits[byte >> 4U];
    hex.digits += kHexDigits[byte & 15U];
  }
  return hex;
}

std::optional<std::vector<unsigned char>> bytes_of(const Hex& hex) {
  if (!is_hex(hex.digits)) return std::nullopt;
  std::vector<unsigned char> bytes(hex.bytes());
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    const auto high = kHexDigits.find(hex.digits[2 * i]);
    const auto low = kHexDigits.find(hex.digits[2 * i + 1]);
    bytes[i] = static_cast<unsigned char>(high * 16 + low);
  }
  return bytes;
}

}  // namespace rb
